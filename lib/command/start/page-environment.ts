import type { Home } from "@/lib/store/home/open-home";
import { secretFile } from "@/lib/store/home/secret-file";
import type { ListenPlace } from "./listen-place";

/**
 * What the pages and the demo are told by the environment: database, home, and for sign-in the home's own
 * secret and the addresses under which a browser may come.
 */
export async function pageEnvironment(
  home: Home,
  place: ListenPlace,
): Promise<Record<string, string>> {
  const { BETTER_AUTH_SECRET, BETTER_AUTH_URL, BETTER_AUTH_TRUSTED_ORIGINS } = process.env;
  // "localhost" and 127.0.0.1 are two origins to a browser, and people type either.
  const near = [place.address, `http://localhost:${place.port}`, `http://127.0.0.1:${place.port}`];
  return {
    DATABASE_URL: home.url,
    DATABASE_URL_OF_VIEWERS: home.viewersUrl,
    CANAL_AUDIT_HOME: home.folder,
    BETTER_AUTH_SECRET: BETTER_AUTH_SECRET || (await secretFile(home.folder, "sign-in-secret")),
    BETTER_AUTH_URL: BETTER_AUTH_URL || place.address,
    BETTER_AUTH_TRUSTED_ORIGINS: BETTER_AUTH_TRUSTED_ORIGINS || [...new Set(near)].join(","),
  };
}
