import { expect, it } from "vitest";
import { textWithin } from "@/lib/reports/text-within";

// Expected values are worked by hand: lengths are in bytes of UTF-8 (RFC 3629).

const asked = (body: BodyInit | null, headers: Record<string, string> = {}) =>
  new Request("http://localhost/", {
    method: "POST",
    body,
    headers,
    duplex: "half",
  } as RequestInit);

it("is the text where it is short enough, counted in bytes", async () => {
  expect(await textWithin(asked("äöü"), 6)).toBe("äöü");
  expect(await textWithin(asked("äöü"), 5)).toBeNull();
  expect(await textWithin(asked(null), 5)).toBe("");
});

it("is not read where its length says that it is too long", async () => {
  const request = asked("short", { "content-length": "1000" });
  expect(await textWithin(request, 10)).toBeNull();
  expect(request.bodyUsed).toBe(false);
});

it("is read no further than allowed where its length is not told", async () => {
  let given = 0;
  const endless = new ReadableStream<Uint8Array>({
    pull(controller) {
      given += 100;
      controller.enqueue(new Uint8Array(100).fill(97));
    },
  });
  expect(await textWithin(asked(endless), 1000)).toBeNull();
  expect(given).toBeLessThanOrEqual(1300);
});
