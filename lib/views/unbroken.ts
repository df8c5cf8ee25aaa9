/** A sentence whose numbers keep their units: no line ends between 36.7 and mL, or within 3 min 45 s. */
export function unbroken(words: string): string {
  return words
    .replace(/(\d) (?=(?:%|mL|mm|min|s|h)(?![\p{L}\d]))/gu, "$1\u00a0")
    .replace(/(min|h) (?=\d)/gu, "$1\u00a0");
}
