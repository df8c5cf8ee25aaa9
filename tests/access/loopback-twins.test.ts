import { expect, it } from "vitest";
import { loopbackTwins } from "@/lib/store/sign-in/loopback-twins";

// Names of this machine: RFC 6761 §6.3 (localhost), RFC 1122 §3.2.1.3 (127/8), RFC 4291 §2.5.3 (::1).
it("trusts this machine by all its names, and no other machine", () => {
  expect(loopbackTwins("http://localhost:3000")).toEqual([
    "http://127.0.0.1:3000",
    "http://localhost:3000",
    "http://[::1]:3000",
  ]);
  expect(loopbackTwins("https://audit.example.org/")).toEqual(["https://audit.example.org"]);
});
