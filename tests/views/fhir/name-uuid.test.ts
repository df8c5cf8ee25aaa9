import { expect, test } from "vitest";
import { nameUuid } from "@/lib/views/fhir/name-uuid";

/*
 * Expected values: RFC 9562, appendix A.4, the UUID of version 5 of www.example.com in the name space of domain names; that
 * of canal-audit.invalid computed with Python 3, uuid.uuid5(uuid.NAMESPACE_DNS, "canal-audit.invalid"), and of "a" in it.
 */
const domainNames = "6ba7b810-9dad-11d1-80b4-00c04fd430c8";

test("a name's UUID is that of the standard", () => {
  expect(nameUuid("www.example.com", domainNames)).toBe("2ed6657d-e927-568b-95e1-2665a8aea6a2");
  expect(nameUuid("canal-audit.invalid", domainNames)).toBe("6cc496b0-78d9-5e68-8989-41cfc5dbd833");
  expect(nameUuid("a")).toBe("a5c9f44c-2853-534c-82d7-9d1dac00af9e");
});
