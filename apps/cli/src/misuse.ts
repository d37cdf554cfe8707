/** The command was asked something it cannot do: exit code 2. The message says what, where, and what to do. */
export class Misuse extends Error {
  override readonly name = "Misuse";
}
