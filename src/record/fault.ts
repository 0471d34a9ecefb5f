/** A fault that stops the program from opening a record: its message is one sentence to print. */
export class CannotOpen extends Error {
  constructor(
    readonly code: string,
    message: string,
  ) {
    super(message);
    this.name = 'CannotOpen';
  }
}
