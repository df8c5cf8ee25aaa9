import { HomeTrouble } from "@/lib/store/home/home-trouble";
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
  const { BETTER_AUTH_URL, BETTER_AUTH_TRUSTED_ORIGINS } = process.env;
  // "localhost" and 127.0.0.1 are two origins to a browser, and people type either.
  const near = [place.address, `http://localhost:${place.port}`, `http://127.0.0.1:${place.port}`];
  return {
    DATABASE_URL: home.url,
    DATABASE_URL_OF_VIEWERS: home.viewersUrl,
    CANAL_AUDIT_HOME: home.folder,
    BETTER_AUTH_SECRET: givenSecret() ?? (await secretFile(home.folder, "sign-in-secret")),
    BETTER_AUTH_URL: BETTER_AUTH_URL || place.address,
    BETTER_AUTH_TRUSTED_ORIGINS: BETTER_AUTH_TRUSTED_ORIGINS || [...new Set(near)].join(","),
  };
}

const shortest = 32;

/**
 * CANAL_AUDIT_SIGN_IN_SECRET, where processes on several machines share what signs their cookies; undefined where the home's own is used.
 * @throws HomeTrouble where it could be guessed.
 */
function givenSecret(): string | undefined {
  const given = process.env.CANAL_AUDIT_SIGN_IN_SECRET?.trim() || process.env.BETTER_AUTH_SECRET;
  if (given && given.length < shortest)
    throw new HomeTrouble(
      `CANAL_AUDIT_SIGN_IN_SECRET is shorter than ${shortest} characters: take 64 hexadecimal digits made at random.`,
    );
  return given || undefined;
}
