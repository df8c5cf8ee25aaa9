/** What a verb did: words for a person, or with --json one document. */
export type Done = { readonly text: string; readonly json: unknown };

/** Said on stderr, in one sentence, with exit code 1. */
export class CannotDo extends Error {
  override readonly name = "CannotDo";
}
