/** A promise inside our own code was broken. Never thrown for a wrong record: that is a finding. */
export class Invariant extends Error {
  constructor(
    readonly code: string,
    message: string,
  ) {
    super(`${message} [${code}]`);
    this.name = "Invariant";
  }
}
