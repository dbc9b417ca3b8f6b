export type TroubleCode =
  | 'newer'
  | 'older'
  | 'missing'
  | 'old-sqlite'
  | 'in-use'
  | 'unreachable'
  | 'unbound'
  | 'unwritable'
  | 'not-a-store'
  | 'damaged'
  | 'full'
  | 'failing'
  | 'exists';

/** Something about the store that a person must mend. The message is for that person: what is wrong and what to do. */
export class StoreTrouble extends Error {
  readonly code: TroubleCode;
  /** What is wrong, without what to do. */
  readonly what: string;

  constructor(code: TroubleCode, message: string, what = message) {
    super(message);
    this.name = 'StoreTrouble';
    this.code = code;
    this.what = what;
  }
}
