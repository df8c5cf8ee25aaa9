import { readFile } from "node:fs/promises";
import { join } from "node:path";
import type pg from "pg";

/** A file of the home that goes into a backup with secrets: its name below the home, and its bytes. */
export type HomeFile = { readonly name: string; readonly content: Buffer };

/** Names that a restored file may have: nothing outside the home, nothing that the database's server needs. */
export const restorableName = /^(patient-key|sign-in-secret|waiting\/[\w-]+(\.[\w-]+)?)$/;

/** Keys and secrets of the home; of those that the environment gives instead, only the patient key is kept. */
export async function secretFiles(folder: string, key: Buffer): Promise<HomeFile[]> {
  const signIn = await readFile(join(folder, "sign-in-secret")).catch(() => null);
  return [
    { name: "patient-key", content: Buffer.from(`${key.toString("hex")}\n`) },
    ...(signIn ? [{ name: "sign-in-secret", content: signIn }] : []),
  ];
}

/** The files that wait for a mapping: they lie in the home as they came, patients and all. */
export async function waitingNames(client: pg.ClientBase): Promise<string[]> {
  const there = await client.query("select to_regclass('waiting_files') as waiting");
  if (there.rows[0].waiting === null) return [];
  const { rows } = await client.query<{ kept: string }>(
    "select kept from waiting_files order by 1",
  );
  return rows.map(({ kept }) => kept.replaceAll("\\", "/"));
}
