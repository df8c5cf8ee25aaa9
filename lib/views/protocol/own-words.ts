/** A practice's own terms in words, by kind and code: "step/own-photo" → "photograph taken". */
export type OwnWords = Readonly<Record<string, string>>;

export type TermKind = "step" | "task" | "reason";

export function ownWordsOf(
  terms: readonly { readonly kind: string; readonly code: string; readonly words: string }[],
): OwnWords {
  return Object.fromEntries(terms.map(({ kind, code, words }) => [`${kind}/${code}`, words]));
}

/** A code without its beginning and its hyphens, where nobody says it better. */
export function plainCode(code: string): string {
  return code.replace(/^own-/, "").replaceAll("-", " ");
}
