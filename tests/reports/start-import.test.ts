import { readdir, readFile } from "node:fs/promises";
import { join } from "node:path";
import { afterEach, expect, test } from "vitest";
import { holderReach } from "@/lib/access/reach";
import { receiveUpload, UploadRefused } from "@/lib/reports/receive-upload";
import { resumeImport } from "@/lib/reports/resume-import";
import { type Begun, startImport } from "@/lib/reports/start-import";
import { prisma } from "@/lib/store/database";
import { cancelImport } from "@/lib/store/import/cancel-import";
import { importOf } from "@/lib/store/import/imports";
import { pathOfWaiting, type WaitingFile, waitingFiles } from "@/lib/store/waiting";
import { eachInUploadHome, endedImport, sentForm } from "./upload-home";

// Expected values follow from what an upload promises; worked by hand.
const home = eachInUploadHome();
const reach = holderReach().records;
afterEach(() => {
  delete process.env.CANAL_AUDIT_UPLOAD_MB;
});

const sessions = [
  "session_id,practice,chair,clinician,patient,started_at,tooth,tooth_notation,treatment,outcome,colour",
  "V-1,OAK,OAK-1,C01,reference-1,2026-07-03T09:10,26,fdi,primary,completed,red",
  "",
].join("\r\n");

const ended = ({ importId }: Begun) => endedImport(importId);

async function filesLeft(): Promise<string[]> {
  for (let tries = 0; tries < 40; tries += 1) {
    const left = await readdir(join(home(), "uploads"));
    if (left.length === 0) return left;
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
  return readdir(join(home(), "uploads"));
}

test("files that were sent are imported and then deleted", async () => {
  const done = await ended(await startImport(reach, ...sentForm({ "sessions.csv": sessions })));
  expect(done).toMatchObject({ state: "done", by: "command line", rowsRead: 1 });
  expect(done.files).toMatchObject([
    { name: "sessions.csv", tableName: "sessions", accepted: 1, ignored: ["colour"] },
  ]);
  expect(await filesLeft()).toEqual([]);
});

test("a file that nothing knows how to read waits, and the others are imported", async () => {
  const begun = await startImport(
    reach,
    ...sentForm({ "sessions.csv": sessions, "odd.csv": "a\r\n1\r\n" }),
  );
  expect(await ended(begun)).toMatchObject({ state: "done", rowsRead: 1 });
  expect(await filesLeft()).toEqual([]);
  const [waiting] = await waitingFiles(reach);
  expect(waiting).toMatchObject({ id: begun.waiting[0], name: "odd.csv", zone: "Europe/London" });
  expect(await readFile(pathOfWaiting(waiting as WaitingFile), "utf8")).toBe("a\r\n1\r\n");
});

test("an import whose process died goes on with its files, once, and they are deleted then", async () => {
  const upload = await receiveUpload(...sentForm({ "sessions.csv": sessions }));
  const { id } = await prisma().import.create({
    data: { by: reach.by, state: "reading", upload: upload.folder, startedAt: new Date(0) },
  });
  expect((await importOf(reach, id))?.state).toBe("failed");
  const both = await Promise.all([resumeImport(reach, id), resumeImport(reach, id)]);
  expect(both.sort()).toEqual([false, true]);
  expect(await ended({ importId: id, waiting: [] })).toMatchObject({ state: "done", rowsRead: 1 });
  expect(await resumeImport(reach, id)).toBe(false);
  expect(await filesLeft()).toEqual([]);
});

test("a cancelled import keeps nothing", async () => {
  const row = "V-1,OAK,OAK-1,C01,reference-1,2026-07-03T09:10,26,fdi,primary,completed,red\r\n";
  const begun = await startImport(
    reach,
    ...sentForm({ "sessions.csv": sessions + row.repeat(300_000) }),
  );
  expect(await cancelImport(reach, begun.importId ?? 0)).toBe(true);
  expect(await ended(begun)).toMatchObject({ state: "cancelled" });
  expect(await prisma().visit.count()).toBe(0);
  expect(await cancelImport(reach, begun.importId ?? 0)).toBe(false);
  expect(await filesLeft()).toEqual([]);
});

test("what cannot be taken is refused in a sentence and leaves nothing on the disk", async () => {
  await expect(startImport(reach, ...sentForm({}))).rejects.toThrow(
    new UploadRefused("Choose at least one file."),
  );
  await expect(startImport(reach, ...sentForm({ "notes.docx": "x" }))).rejects.toThrow(
    /notes\.docx is no record file/,
  );
  await expect(
    startImport(reach, ...sentForm({ "sessions.csv": sessions }, "Mars/Base")),
  ).rejects.toThrow(/no time zone/);
  process.env.CANAL_AUDIT_UPLOAD_MB = "1";
  await expect(
    startImport(reach, ...sentForm({ "sessions.csv": "x".repeat(2_000_000) })),
  ).rejects.toThrow(/larger than 1 MB/);
  expect(await filesLeft()).toEqual([]);
});

test("a file's own name decides nothing on the disk but its ending", async () => {
  const upload = await receiveUpload(...sentForm({ "../../out of here/sessions.csv": sessions }));
  const [source] = upload.sources;
  expect(source?.path).toMatch(/\/uploads\/[0-9a-f]{8}-\d+-[0-9a-f]{16}\/0\.csv$/);
  expect(source?.path.startsWith(home())).toBe(true);
  expect(await readFile(source?.path ?? "", "utf8")).toBe(sessions);
  await upload.remove();
  expect(await filesLeft()).toEqual([]);
});
