export type TroubleCode =
  | 'newer'
  | 'older'
  | 'missing'
  | 'moved'
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
  /** The message, where the command in it gets `options`, which lead it to this store: see optionsFor. */
  readonly messageWith: (options: string) => string;

  constructor(code: TroubleCode, message: string | ((options: string) => string), what?: string) {
    const messageWith = typeof message === 'string' ? () => message : message;
    super(messageWith(''));
    this.name = 'StoreTrouble';
    this.code = code;
    this.what = what ?? this.message;
    this.messageWith = messageWith;
  }
}
