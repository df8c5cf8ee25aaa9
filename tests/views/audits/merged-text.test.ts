import fc from "fast-check";
import { expect, test } from "vitest";
import { mergedText } from "@/lib/views/audits/merged-text";

// Expected values are worked by hand: what either wrote is there; what one took away and the other left alone is gone.

test("two sentences changed apart are both there", () => {
  const base = "The pump was set. The timer was not.";
  expect(
    mergedText(
      base,
      "The pump was set low. The timer was not.",
      "The pump was set. The timer was never.",
    ),
  ).toBe("The pump was set low. The timer was never.");
});

test("where both wrote at the same place both stand", () => {
  expect(mergedText("", "Mine.", "Yours.")).toBe("Mine. Yours.");
  expect(mergedText("One two.", "One blue two.", "One red two.")).toMatch(/blue\s+red|red\s+blue/);
});

test("what one took away and the other left alone is gone; what the other wrote there stays", () => {
  expect(mergedText("One two three.", "One three.", "One two three.")).toBe("One three.");
  expect(mergedText("One two three.", "One three.", "One TWO three.")).toContain("TWO");
});

test("whoever changed nothing gets the other's text", () => {
  expect(mergedText("a b", "a b", "a c")).toBe("a c");
  expect(mergedText("a b", "a c", "a b")).toBe("a c");
});

const word = fc.constantFrom("pump", "timer", "canal", "file", "rinse", "chair");
const base = fc.array(word, { maxLength: 12 });
/** Places at which somebody writes a word that nobody else has. */
const places = fc.array(fc.nat(12), { maxLength: 4 });

test("every word that either of two people adds is in the merged text, and every word of the text they began from", () => {
  fc.assert(
    fc.property(base, places, places, (words, first, second) => {
      const added = (at: number[], whose: string) => {
        const out: string[] = [...words];
        for (const [place, where] of at.entries())
          out.splice(Math.min(where, out.length), 0, `${whose}${place}`);
        return out.join(" ");
      };
      const merged = mergedText(
        words.join(" "),
        added(first, "mine"),
        added(second, "yours"),
      ).split(/\s+/);
      for (const place of first.keys()) expect(merged).toContain(`mine${place}`);
      for (const place of second.keys()) expect(merged).toContain(`yours${place}`);
      for (const one of words) expect(merged).toContain(one);
    }),
  );
});
