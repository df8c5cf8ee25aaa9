import { z } from "zod";

const sha256 = z.string().regex(/^[0-9a-f]{64}$/);

/** What a backup says of itself: its last entry, so that one broken off has none. */
export const manifestShape = z.object({
  format: z.literal("canal-audit-backup-1"),
  /** Version of the software that wrote it. */
  software: z.string(),
  writtenAt: z.string(),
  /** PostgreSQL's own number, as 180004. */
  postgres: z.number(),
  /** Migrations that had been applied, in their order. */
  migrations: z.array(z.object({ name: z.string(), checksum: sha256 })).min(1),
  /** In an order in which each row comes after those it refers to. */
  tables: z.array(
    z.object({
      name: z.string(),
      columns: z.array(z.string()),
      rows: z.number(),
      /** Of the rows in the order of their key, in COPY's text format. */
      sha256,
    }),
  ),
  sequences: z.array(z.object({ name: z.string(), value: z.string().regex(/^\d+$/) })),
  /** Tells the patient key without giving it away. */
  patientKey: z.string(),
  /** Files of the home that are in it; without secrets none. */
  files: z.array(z.object({ name: z.string(), bytes: z.number(), sha256 })),
  /** Files in the home that wait for a mapping and are not in it. */
  waitingLeft: z.number(),
  /** All figures of all quarters with records, where that was asked. */
  figures: z.object({ quarters: z.array(z.string()), sha256, revision: z.string() }).optional(),
});

export type Manifest = z.infer<typeof manifestShape>;
export type BackedTable = Manifest["tables"][number];

/** Where the manifest lies in the archive. */
export const manifestName = "manifest.json";
