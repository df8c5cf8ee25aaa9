import { mkdtemp, readdir, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { extname, join, resolve } from "node:path";
import { holderReach } from "@/lib/access/reach";
import { importRecords } from "@/lib/reports/import-records";
import { recordFileEndings } from "@/lib/reports/record-files";
import { withHome } from "@/lib/reports/with-home";

/** Imports the record files of a folder into a home of their own, runs `work` there, and takes the home away again. */
export async function withFolder<Result>(
  folder: string,
  zone: string,
  work: () => Promise<Result>,
): Promise<Result> {
  const whole = resolve(process.env.INIT_CWD ?? process.cwd(), folder);
  const names = (await readdir(whole)).filter((name) => recordFileEndings.includes(extname(name)));
  const sources = names.sort().map((name) => ({ path: join(whole, name), name, found: true }));
  const home = await mkdtemp(join(tmpdir(), "canal-audit-bench-"));
  process.env.CANAL_AUDIT_HOME = home;
  delete process.env.DATABASE_URL;
  try {
    return await withHome(async ({ key }) => {
      const { files } = await importRecords(holderReach().records, sources, {
        zone,
        key,
        heldListed: 0,
      });
      const rows = files.reduce((sum, file) => sum + file.accepted, 0);
      console.log(`${rows} rows of ${files.length} files taken in`);
      return work();
    });
  } finally {
    await rm(home, { recursive: true, force: true });
  }
}
