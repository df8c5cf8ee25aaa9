import { keepLog } from "./keep-log";
import { migrate } from "./migrate";
import type { Home } from "./open-home";

/** Brings an opened home's database up to date, and its log out of the application's hands. Answers what was applied. */
export async function readyDatabase(home: Pick<Home, "url" | "keeperUrl">): Promise<string[]> {
  const applied = await migrate(home.url);
  await keepLog(home);
  return applied;
}
