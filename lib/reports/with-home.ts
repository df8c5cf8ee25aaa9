import { disconnect } from "@/lib/store/database";
import { type Home, openHome } from "@/lib/store/home/open-home";
import { readyDatabase } from "@/lib/store/home/ready-database";
import { asHolder } from "@/lib/store/wall/as-whom";

/**
 * Opens the home, brings its database up to date, runs `work` on it as its holder and leaves it again.
 * @param asItIs leaves the database at the migration it has.
 */
export async function withHome<Result>(
  work: (home: Home) => Promise<Result>,
  onProgress?: (doing: string) => void,
  asItIs = false,
): Promise<Result> {
  const home = await openHome({ onProgress });
  const before = process.env.DATABASE_URL;
  try {
    if (!asItIs) await readyDatabase(home);
    process.env.DATABASE_URL = home.url;
    return await asHolder(() => work(home));
  } finally {
    await disconnect();
    if (before === undefined) delete process.env.DATABASE_URL;
    else process.env.DATABASE_URL = before;
    await home.close();
  }
}
