import { describe, expect, it } from "vitest";
import { wantedAddress } from "@/app/sign-in/wanted-address";

// Expected values are the project's own rules: only an address of this application is led to after signing in.

// Which forms browsers read as another host: WHATWG URL Standard, "path or authority state" and "\" as "/" in special URLs.

describe("where a sign-in leads", () => {
  it("keeps the address that was wanted, with its filters", () => {
    expect(wantedAddress({ to: "/lead", period: "2026-Q3", practice: "P1" })).toBe(
      "/lead?period=2026-Q3&practice=P1",
    );
    expect(wantedAddress({ to: "/lead?period=2026-Q3" })).toBe("/lead?period=2026-Q3");
  });

  it.each([
    "//elsewhere.example",
    "/\\elsewhere.example",
    "https://elsewhere.example/lead",
    "javascript:alert(1)",
    "/\t/elsewhere.example",
    "/sign-in",
    "",
  ])("never leads elsewhere: %j", (to) => {
    expect(wantedAddress({ to })).toBe("/");
  });
});
