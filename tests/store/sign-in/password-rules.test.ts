import { describe, expect, it } from "vitest";
import { isCommonPassword } from "@/lib/store/sign-in/common-passwords";
import { passwordTrouble } from "@/lib/store/sign-in/password-rules";

// Expected values follow NIST SP 800-63B rev. 4, 3.1.1.2 (published): 15 characters of a password that may stand alone,
// 64 and more taken, any Unicode, no rules of composition, refused what is common or follows from the person. What
// counts as following from them is the project's own.

describe("a new password", () => {
  it("has 15 characters at least, counted as characters", () => {
    expect(passwordTrouble("plover vent oa")).toMatch(/At least 15/);
    expect(passwordTrouble("plover vent oak")).toBeNull();
    // Each is one character of two UTF-16 units.
    expect(
      passwordTrouble("\u{1F9B7}\u{1F40B}\u{1F343}\u{1F33E}\u{1F335}\u{1F344}\u{1F41A}"),
    ).toMatch(/At least/);
    // Composed in form NFKC: fifteen code points before, fourteen after.
    expect(passwordTrouble("plover vent e\u0301")).toMatch(/At least/);
  });

  it("may be long, of one case, of any script, with spaces", () => {
    const long = Array.from({ length: 64 }, (_, place) => "thequickwormsays"[(place * 7) % 16]);
    expect(passwordTrouble(`${long.join("")} and more`)).toBeNull();
    expect(passwordTrouble("seven otters under a tin roof")).toBeNull();
    expect(passwordTrouble("семь выдр под крышей")).toBeNull();
    expect(passwordTrouble("屋根の下の七匹のかわうそたちの歌")).toBeNull();
    expect(passwordTrouble("x7".concat("otter ".repeat(60)))).toMatch(/At most 256/);
  });

  it.each([
    ...[
      "passwordpassword",
      "PasswordPassword",
      "1qaz2wsx3edc4rfv",
      "sunshine2026!!!!",
      "!!!!!!!basketball",
    ],
    ...[
      "123456789012345",
      "abcdefghijklmnop",
      "aaaaaaaaaaaaaaaa",
      "otterotterotter",
      "987654321098765",
    ],
  ])("is not %s", (guessed) => {
    expect(passwordTrouble(guessed)).toMatch(/first that anybody/);
  });

  it("is not the person's name, email or the tool's name with a little beside", () => {
    const own = ["Odile Farrowmere", "odile.farrowmere@practice.example"];
    expect(passwordTrouble("OdileFarrowmere1", own)).toMatch(/Too much/);
    expect(passwordTrouble("canal audit canal audit 26", own)).toMatch(/Too much|first/);
    expect(passwordTrouble("practice.example farrowmere", own)).toMatch(/Too much/);
    expect(passwordTrouble("odile keeps eleven geese", own)).toBeNull();
  });
});

it("the list knows the commonest and not what nobody has", () => {
  expect(["password", "12345678", "Iloveyou", "sunshine"].map(isCommonPassword)).toEqual([
    true,
    true,
    true,
    true,
  ]);
  expect(isCommonPassword("seven otters under a tin roof")).toBe(false);
});
