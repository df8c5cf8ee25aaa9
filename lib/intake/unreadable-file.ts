/** A file that is none of the record format's: one plain sentence naming the file and what to do. */
export class UnreadableFile extends Error {
  override readonly name = "UnreadableFile";

  constructor(
    readonly file: string,
    readonly what: string,
  ) {
    super(`${file}: ${what}`);
  }
}
