import { diff3MergeRegions } from "node-diff3";

/**
 * Two people's texts that began from the same one, as one: what either changed is in it. Where both changed the same place both
 * stand, one after the other, and what only one of them took away while the other wrote there stays. By words, so that two sentences of one
 * paragraph do not disturb each other.
 */
export function mergedText(base: string, theirs: string, mine: string): string {
  if (theirs === mine || mine === base) return theirs;
  if (theirs === base) return mine;
  const regions = diff3MergeRegions(words(theirs), words(base), words(mine));
  return regions
    .map((region) => {
      if (region.stable) return region.bufferContent.join("");
      const [first, second] = [region.aContent.join(""), region.bContent.join("")];
      if (first.trim() === "" || first === second) return second || first;
      if (second.trim() === "") return first;
      return `${first}${/\s$/.test(first) || /^\s/.test(second) ? "" : " "}${second}`;
    })
    .join("");
}

/** Words and what stands between them; together they are the text. */
function words(text: string): string[] {
  return text.match(/\s+|[^\s]+/g) ?? [];
}
