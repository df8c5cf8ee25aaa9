import { describe, expect, it } from "vitest";
import {
  type ToothNotation,
  toothByIso3950,
  toothGroup,
  toothNotations,
} from "@/lib/records/tooth";

/** ISO 3950: first digit the quadrant (1–4 permanent, 5–8 primary), second the place from the midline. */
const iso3950 = /^([1-4][1-8]|[5-8][1-5])$/;

describe("a tooth by ISO 3950", () => {
  it.each(everyTwoDigits())("%s is a tooth exactly where ISO 3950 has it", (text) => {
    expect(toothByIso3950(text, "fdi")).toBe(iso3950.test(text) ? text : undefined);
  });

  // Expected: common practice, as the trade prints the three notations beside each other.
  it.each([
    ["1", "18"],
    ["3", "16"],
    ["8", "11"],
    ["9", "21"],
    ["14", "26"],
    ["16", "28"],
    ["17", "38"],
    ["19", "36"],
    ["24", "31"],
    ["25", "41"],
    ["30", "46"],
    ["32", "48"],
    ["A", "55"],
    ["E", "51"],
    ["F", "61"],
    ["J", "65"],
    ["K", "75"],
    ["O", "71"],
    ["P", "81"],
    ["T", "85"],
    ["a", "55"],
  ])("universal %s is %s", (text, iso) => {
    expect(toothByIso3950(text, "universal")).toBe(iso);
  });

  it.each([
    ["UR6", "16"],
    ["UL6", "26"],
    ["LL6", "36"],
    ["LR6", "46"],
    ["UR1", "11"],
    ["LR8", "48"],
    ["URA", "51"],
    ["ULE", "65"],
    ["LLC", "73"],
    ["LRB", "82"],
    ["ll6", "36"],
  ])("palmer %s is %s (common practice)", (text, iso) => {
    expect(toothByIso3950(text, "palmer")).toBe(iso);
  });

  it.each<[string, ToothNotation]>([
    ["0", "universal"],
    ["33", "universal"],
    ["U", "universal"],
    ["01", "universal"],
    ["1.5", "universal"],
    ["", "universal"],
    ["UR9", "palmer"],
    ["UR0", "palmer"],
    ["URF", "palmer"],
    ["6UR", "palmer"],
    ["16", "palmer"],
    ["R6", "palmer"],
    ["", "fdi"],
    ["1", "fdi"],
    ["111", "fdi"],
    ["A", "fdi"],
    [" 16", "fdi"],
    ["१६", "fdi"],
  ])("%j is no tooth in %s notation", (text, notation) => {
    expect(toothByIso3950(text, notation)).toBeUndefined();
  });

  it.each(["universal", "palmer"] as const)(
    "%s notation names each of the 52 teeth once",
    (notation) => {
      const texts = notation === "universal" ? universalTexts() : palmerTexts();
      const teeth = texts.map((text) => toothByIso3950(text, notation));
      expect(texts).toHaveLength(52);
      expect([...teeth].sort()).toEqual(everyTwoDigits().filter((text) => iso3950.test(text)));
    },
  );

  it("has exactly 11–18, 21–28, 31 and 32 valid in two notations", () => {
    const inTwo = everyTwoDigits().filter(
      (text) =>
        toothNotations.filter((notation) => toothByIso3950(text, notation) !== undefined).length >
        1,
    );
    // Computed by hand: ISO 3950 permanent teeth up to 32, as universal ends there.
    expect(inTwo).toEqual(
      [..."12345678"]
        .map((n) => `1${n}`)
        .concat(
          [..."12345678"].map((n) => `2${n}`),
          ["31", "32"],
        ),
    );
  });
});

describe("the group of a tooth (anatomy, common practice)", () => {
  it.each([
    ["11", "incisor or canine"],
    ["23", "incisor or canine"],
    ["34", "premolar"],
    ["45", "premolar"],
    ["16", "molar"],
    ["38", "molar"],
    ["53", "incisor or canine"],
    ["64", "molar"],
    ["85", "molar"],
  ])("%s is a %s", (iso, group) => {
    expect(toothGroup(iso)).toBe(group);
  });
});

function everyTwoDigits(): string[] {
  return Array.from({ length: 90 }, (_, place) => String(place + 10));
}

function universalTexts(): string[] {
  return [
    ...Array.from({ length: 32 }, (_, place) => String(place + 1)),
    ..."ABCDEFGHIJKLMNOPQRST",
  ];
}

function palmerTexts(): string[] {
  return ["UR", "UL", "LL", "LR"].flatMap((quadrant) =>
    [..."12345678ABCDE"].map((place) => quadrant + place),
  );
}
