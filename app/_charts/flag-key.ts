import type { KeyEntry } from "./chart-key";

/** Entries of the key for the flags that stand in a drawing, and no others. */
export function flagKey(points: readonly { flag?: "look" | "look first" | null }[]): KeyEntry[] {
  return (["look", "look first"] as const)
    .filter((flag) => points.some((point) => point.flag === flag))
    .map((flag) => ({ sample: flag, words: flag }));
}
