/** The trade's names of root canals (common practice); the order is the one pages list them in. */
export const canalNames = [
  "MB",
  "MB1",
  "MB2",
  "MB3",
  "ML",
  "MM",
  "M",
  "DB",
  "DL",
  "D",
  "B",
  "L",
  "P",
  "MP",
  "DP",
  "main",
] as const;

/**
 * The standard spelling of a canal's name, whatever its case, or undefined where it is none.
 * `unknown-1`, `unknown-2` … stand for canals that a machine cannot name.
 */
export function canalName(text: string): string | undefined {
  const unknown = /^unknown-([1-9]\d?)$/i.exec(text);
  if (unknown) return `unknown-${unknown[1]}`;
  return canalNames.find((name) => name.toLowerCase() === text.toLowerCase());
}
