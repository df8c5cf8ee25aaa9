import fc from "fast-check";
import { expect, test } from "vitest";
import { multipart, NotFormData } from "@/lib/reports/multipart";

// Parts are worked by hand from the body above them, by RFC 7578.

// The outside is Node's own encoder of form data (undici): what it writes must be read back as it was.
type Part = { name: string; filename?: string; bytes: string };

async function encoded(parts: readonly Part[]): Promise<{ bytes: Buffer; type: string }> {
  const form = new FormData();
  for (const { name, filename, bytes } of parts) {
    if (filename === undefined) form.append(name, bytes);
    else form.append(name, new Blob([Buffer.from(bytes, "latin1")]), filename);
  }
  const response = new Response(form);
  return {
    bytes: Buffer.from(await response.arrayBuffer()),
    type: response.headers.get("content-type") ?? "",
  };
}

async function read(bytes: Buffer, type: string, step: number): Promise<Part[]> {
  async function* body() {
    for (let at = 0; at < bytes.length; at += step) yield bytes.subarray(at, at + step);
  }
  const found: { name: string; filename?: string; pieces: Buffer[] }[] = [];
  for await (const event of multipart(body(), type)) {
    if ("part" in event) {
      const { name, filename } = event.part;
      found.push({ name, ...(filename === undefined ? {} : { filename }), pieces: [] });
    } else found.at(-1)?.pieces.push(Buffer.from(event.bytes));
  }
  return found.map(({ pieces, ...part }) => ({
    ...part,
    bytes: Buffer.concat(pieces).toString("latin1"),
  }));
}

test("form data is read back as it was, however the body is cut", async () => {
  const bytes = fc
    .array(fc.constantFrom("\r", "\n", "-", "a", "\u00ff", "\r\n--", "----form"), { maxLength: 40 })
    .map((some) => some.join(""));
  const part = fc.record({
    filename: fc.constantFrom("sessions.csv", 'odd "name"; x.csv', "größe.csv"),
    bytes,
  });
  await fc.assert(
    fc.asyncProperty(
      fc.array(part, { maxLength: 4 }),
      fc.integer({ min: 1, max: 97 }),
      async (files, step) => {
        const parts = [
          { name: "zone", bytes: "Europe/London" },
          ...files.map((file) => ({ name: "files", ...file })),
        ];
        const { bytes: body, type } = await encoded(parts);
        expect(await read(body, type, step)).toEqual(parts);
      },
    ),
    { numRuns: 150 },
  );
});

test("a body that breaks off or is no form data is refused", async () => {
  const { bytes, type } = await encoded([
    { name: "files", filename: "a.csv", bytes: "x".repeat(1000) },
  ]);
  await expect(read(bytes.subarray(0, -10), type, 64)).rejects.toThrow(NotFormData);
  await expect(read(bytes, "application/json", 64)).rejects.toThrow(NotFormData);
});

test("no more is held than a chunk and the boundary: a large file comes out in pieces", async () => {
  const { bytes, type } = await encoded([
    { name: "files", filename: "a.csv", bytes: "x".repeat(1_000_000) },
  ]);
  let largest = 0;
  async function* body() {
    for (let at = 0; at < bytes.length; at += 4096) yield bytes.subarray(at, at + 4096);
  }
  for await (const event of multipart(body(), type))
    if ("bytes" in event) largest = Math.max(largest, event.bytes.length);
  expect(largest).toBeGreaterThan(0);
  expect(largest).toBeLessThan(4096 + 200);
});
