import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach } from "vitest";
import { holderReach } from "@/lib/access/reach";
import { disconnect } from "@/lib/store/database";
import type { ScratchDatabase } from "@/lib/store/home/scratch-database";
import { importOf } from "@/lib/store/import/imports";
import { freshDatabase } from "../fresh-database";

/** Every test of the file has an empty database and an empty home with a patient key; answers where the home is. */
export function eachInUploadHome(): () => string {
  const kept = { ...process.env };
  let database: ScratchDatabase;
  let home = "";
  beforeEach(async () => {
    database = await freshDatabase();
    home = await mkdtemp(join(tmpdir(), "canal-audit-upload-"));
    process.env.DATABASE_URL = database.url;
    process.env.CANAL_AUDIT_HOME = home;
    process.env.CANAL_AUDIT_PATIENT_KEY = "ab".repeat(32);
  });
  afterEach(async () => {
    await disconnect();
    await database.drop();
    await rm(home, { recursive: true, force: true });
    process.env.CANAL_AUDIT_HOME = kept.CANAL_AUDIT_HOME;
    delete process.env.CANAL_AUDIT_PATIENT_KEY;
  });
  return () => home;
}

/** The body and content type of a form with these files. */
export function sentForm(files: Readonly<Record<string, BlobPart>>, zone = "Europe/London") {
  const form = new FormData();
  form.set("zone", zone);
  for (const [name, content] of Object.entries(files))
    form.append("files", new Blob([content]), name);
  const { body, headers } = new Response(form);
  if (!body) throw new Error("no body");
  return [body as unknown as AsyncIterable<Uint8Array>, headers.get("content-type") ?? ""] as const;
}

/** The import once it has ended, however it ended. */
export async function endedImport(importId: number | undefined) {
  if (importId === undefined) throw new Error("nothing was begun");
  for (let tries = 0; tries < 400; tries += 1) {
    const found = await importOf(holderReach().records, importId);
    if (found && found.state !== "reading" && found.state !== "publishing") return found;
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
  throw new Error("the import did not end");
}
