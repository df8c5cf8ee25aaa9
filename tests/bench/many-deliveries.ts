import { once } from "node:events";
import { createWriteStream } from "node:fs";
import { join } from "node:path";

const perCanal = 25;

/** Writes the visits and canals for so many deliveries, in files that are brought in first. */
export async function writeVisits(folder: string, deliveries: number): Promise<string[]> {
  const canals = Math.ceil(deliveries / perCanal);
  const sessions = join(folder, "sessions.csv");
  await writeLines(sessions, [
    "session_id,practice,chair,clinician,patient,started_at,tooth,tooth_notation,treatment,outcome",
    ...(await visitLines(Math.ceil(canals / 2))),
  ]);
  const canalFile = join(folder, "canals.csv");
  const names = ["MB", "D"];
  const rows = Array.from(
    { length: canals },
    (_, n) => `V${Math.floor(n / 2)},${names[n % 2]},rotary,yes`,
  );
  await writeLines(canalFile, ["session_id,canal,preparation,timer_reset", ...rows]);
  return [sessions, canalFile];
}

/** Writes one irrigation file with so many rows; nothing but the row being written is in memory. */
export async function writeDeliveries(folder: string, deliveries: number): Promise<string> {
  const file = join(folder, "irrigation.csv");
  const out = createWriteStream(file);
  out.write(
    "session_id,canal,seq,irrigant,concentration_pct,volume_ml,flow_ml_min,duration_s,basis,delivery,activation\n",
  );
  for (let row = 0; row < deliveries; row += 1) {
    const canal = Math.floor(row / perCanal);
    const line = `V${Math.floor(canal / 2)},${canal % 2 ? "D" : "MB"},${(row % perCanal) + 1},naocl,3,${(row % 50) / 10},4,${15 + (row % 60)},metered,continuous,none\n`;
    if (!out.write(line)) await once(out, "drain");
  }
  out.end();
  await once(out, "finish");
  return file;
}

async function visitLines(visits: number): Promise<string[]> {
  const start = Date.UTC(2024, 0, 1, 8);
  return Array.from({ length: visits }, (_, n) => {
    const at = new Date(start + n * 30 * 60_000 * (visits > 30_000 ? 1 : 2)).toISOString();
    return `V${n},OAK,OAK-${(n % 8) + 1},C${(n % 12) + 1},p${n % 5000},${at},36,fdi,primary,completed`;
  });
}

async function writeLines(file: string, lines: readonly string[]): Promise<void> {
  const out = createWriteStream(file);
  for (const line of lines) if (!out.write(`${line}\n`)) await once(out, "drain");
  out.end();
  await once(out, "finish");
}
