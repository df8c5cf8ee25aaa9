/** A text as PostgreSQL takes it, without NUL and half of a surrogate pair, and apart from the long text that it was cut from. */
export function storable(text: string): string {
  return Buffer.from(text.replaceAll("\0", "\ufffd")).toString();
}
