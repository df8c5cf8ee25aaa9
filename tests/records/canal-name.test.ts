import { describe, expect, it } from "vitest";
import { canalName, canalNames } from "@/lib/records/canal-name";

describe("a canal's name (the trade's names, common practice)", () => {
  it.each(canalNames)("%s is taken in any case and given back in its own", (name) => {
    expect(canalName(name.toLowerCase())).toBe(name);
    expect(canalName(name.toUpperCase())).toBe(name);
  });

  it("has each name once, whatever the case", () => {
    expect(new Set(canalNames.map((name) => name.toLowerCase())).size).toBe(canalNames.length);
  });

  it.each([
    ["unknown-1", "unknown-1"],
    ["Unknown-12", "unknown-12"],
  ])("%s stands for a canal that a machine cannot name", (text, name) => {
    expect(canalName(text)).toBe(name);
  });

  it.each([
    "unknown",
    "unknown-0",
    "unknown-01",
    "unknown-100",
    "MB4",
    "mesiobuccal",
    "",
    " MB",
    "MB1,MB2",
    "constructor",
  ])("%j is none", (text) => {
    expect(canalName(text)).toBeUndefined();
  });
});
