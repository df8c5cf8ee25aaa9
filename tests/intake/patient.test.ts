import { describe, expect, it } from "vitest";
import { checkRow } from "@/lib/intake/check-row";
import { tables } from "@/lib/records/tables";
import { context, readAll, right, rowsIn } from "./read-text";

// Properties: planted references, worked by hand, must not be found.

const reference = "plain-reference-4711";
const hash = context.pseudonym("NORTH", reference);
const row = { ...right.sessions, patient: reference };

describe("the patient's reference", () => {
  it("is kept as its keyed hash alone", () => {
    const good = checkRow("sessions", row, { file: "f", line: 2 }, context);
    expect(good).toMatchObject({ verdict: "good", values: { patient: hash } });
    expect(JSON.stringify(good)).not.toContain(reference);
  });

  it("is hashed in its practice, and by none where the practice is missing", () => {
    const held = checkRow("sessions", { ...row, practice: "" }, { file: "f", line: 2 }, context);
    expect(held).toMatchObject({
      verdict: "held",
      raw: { patient: context.pseudonym("", reference) },
    });
    expect(JSON.stringify(held)).not.toContain(reference);
  });

  it("that names the case too is hashed there too, so that the case still joins", () => {
    const good = checkRow(
      "sessions",
      { ...row, case_id: reference },
      { file: "f", line: 2 },
      context,
    );
    expect(good).toMatchObject({ verdict: "good", values: { patient: hash, case_id: hash } });
  });

  it("is not left in clear inside the case's name", () => {
    const named = { ...row, case_id: `${reference}-16` };
    const good = checkRow("sessions", named, { file: "f", line: 2 }, context);
    expect(good.verdict).toBe("good");
    expect(JSON.stringify(good)).not.toContain(reference);
  });

  it("is not kept of a column that no field takes, nor of a row too short to tell its cells", async () => {
    const text = `session_id,patient,canal,seq,irrigant,delivery\nV-1,${reference},MB1,1,naocl,syringe\n${reference},MB1,2,naocl,syringe\n`;
    const rows = await rowsIn("irrigation.csv", text);
    expect(rows).toHaveLength(2);
    expect(JSON.stringify(rows)).not.toContain(reference);
  });

  it.each(tables.sessions.columns.map((column) => column.name))(
    "never leaves a held row when %s holds it too",
    (column) => {
      for (const text of [reference, `Dr ${reference} again`]) {
        const held = checkRow(
          "sessions",
          { ...row, treatment: "cup", [column]: text },
          { file: "f", line: 2 },
          context,
        );
        expect(held.verdict).toBe("held");
        if (column !== "patient") expect(JSON.stringify(held)).not.toContain(reference);
        else expect(JSON.stringify(held)).not.toContain(text);
      }
    },
  );

  it.each([
    ["with a control character", `${reference}\n`.concat("x")],
    ["too long", reference.repeat(20)],
  ])("%s is not shown where it is found wrong", (_, text) => {
    const held = checkRow("sessions", { ...row, patient: text }, { file: "f", line: 2 }, context);
    expect(held).toMatchObject({
      verdict: "held",
      reasons: [{ column: "patient", found: "(not shown)" }],
    });
    expect(JSON.stringify(held)).not.toContain(reference);
  });

  const header = Object.keys(row).join(",");
  const cells = Object.values(row).join(",");
  it.each([
    ["a row of too many cells", "sessions.csv", `${header}\n${cells},more\n`],
    ["a row of too few cells", "sessions.csv", `${header}\n${cells.replace("NORTH,", "")}\n`],
    ["a quote never closed", "sessions.csv", `${header}\n"${cells}\n`],
    ["broken JSON", "sessions.json", `[${JSON.stringify(row).replace('":"', '" "')}]`],
    ["a nested patient", "sessions.json", JSON.stringify([{ ...row, patient: { id: reference } }])],
    ["the patient twice", "sessions.json", JSON.stringify([{ ...row, Patient: reference }])],
    ["a broken line", "sessions.ndjson", `${JSON.stringify(row).slice(0, -1)}\n`],
  ])("does not leave %s", async (_, name, content) => {
    const rows = await rowsIn(name, content);
    expect(rows).toHaveLength(1);
    expect(rows[0]).toMatchObject({ verdict: "held" });
    expect(JSON.stringify(rows)).not.toContain(reference);
  });

  it("leaves nothing of a row of another length, as any cell may be it", async () => {
    const [held] = await rowsIn("sessions.csv", `${header}\n${cells},more\n`);
    expect(held).toMatchObject({ key: "", raw: {} });
    expect(held).not.toHaveProperty("session_id");
  });

  it.each(["sessions.csv", "export.csv"])(
    "is not told in the refusal of %s without a header row",
    async (name) => {
      const refusal = await readAll(name, `${cells}\n${cells}\n`).catch((trouble: unknown) =>
        String(trouble),
      );
      expect(refusal).toMatch(/UnreadableFile/);
      expect(refusal).not.toContain(reference);
    },
  );
});
