export type TroubleCode =
  | 'newer'
  | 'older'
  | 'missing'
  | 'old-sqlite'
  | 'in-use'
  | 'unwritable'
  | 'not-a-store'
  | 'damaged'
  | 'full'
  | 'exists';

/** Something about the store that a person must mend. The message is for that person: what is wrong and what to do. */
export class StoreTrouble extends Error {
  readonly code: TroubleCode;

  constructor(code: TroubleCode, message: string) {
    super(message);
    this.name = 'StoreTrouble';
    this.code = code;
  }
}
