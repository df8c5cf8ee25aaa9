import { execFile } from "node:child_process";
import { existsSync } from "node:fs";
import { writeFile } from "node:fs/promises";
import { join } from "node:path";
import { promisify } from "node:util";
import { request } from "@playwright/test";
import pg from "pg";
import { openHome } from "@/lib/store/home/open-home";
import { projectFolder } from "@/lib/store/home/project-folder";
import {
  accountOf,
  everybody,
  fileInHome,
  type Known,
  practiceOfAdded,
  type Somebody,
} from "./everybody";

/**
 * Adds the people whom the demo has not, signs everybody in once, and finds out what the addresses need. Runs after
 * running-app.ts. The export is a default one because Playwright asks for that.
 */
export default async function signEverybodyIn(): Promise<void> {
  const home = await openHome();
  const client = new pg.Client({ connectionString: home.url });
  await client.connect();
  try {
    const { rows } = await client.query<{ email: string }>("select email from users");
    for (const somebody of everybody) {
      const { added, email } = accountOf(somebody);
      if (added && !rows.some((row) => row.email === email)) await add(somebody);
    }
    await Promise.all(everybody.map(signIn));
    await writeFile(fileInHome("known-to-the-tests.json"), JSON.stringify(await findOut(client)));
  } finally {
    await client.end();
    await home.close();
  }
}

/** By the command, as whoever keeps the machine would. */
async function add(somebody: Somebody): Promise<void> {
  const { role, email, password } = accountOf(somebody);
  const { DATABASE_URL: _, ...env } = process.env;
  await promisify(execFile)(
    process.execPath,
    [
      ...["--import", "tsx", "lib/command/canal-audit.ts", "people", "add", "--role", role],
      ...[
        "--email",
        email,
        "--name",
        somebody,
        "--password",
        password,
        "--practice",
        practiceOfAdded,
      ],
    ],
    {
      cwd: projectFolder,
      env: { ...env, TSX_TSCONFIG_PATH: join(projectFolder, "lib/command/tsconfig.json") },
    },
  );
}

/** A session that is kept from a run before, in the same home, is used on: the tool limits attempts. */
async function signIn(somebody: Somebody): Promise<void> {
  const { email, password } = accountOf(somebody);
  const baseURL = process.env.CANAL_AUDIT_URL ?? "";
  const path = fileInHome(`signed-in-${somebody.replaceAll(" ", "-")}.json`);
  if (await isSignedIn(baseURL, path)) return;
  const context = await request.newContext({ baseURL, extraHTTPHeaders: { origin: baseURL } });
  const answer = await context.post("/api/auth/sign-in/email", { data: { email, password } });
  if (!answer.ok()) throw new Error(`${somebody} could not sign in: ${answer.status()}`);
  await context.storageState({ path });
  await context.dispose();
}

async function isSignedIn(baseURL: string, storageState: string): Promise<boolean> {
  if (!existsSync(storageState)) return false;
  const context = await request.newContext({ baseURL, storageState });
  const account = await context.get("/account", { maxRedirects: 0 });
  await context.dispose();
  return account.ok();
}

async function findOut(client: pg.Client): Promise<Known> {
  const one = async <Value>(sql: string): Promise<Value> => {
    const { rows } = await client.query<{ value: Value }>(sql);
    if (!rows[0]) throw new Error(`The demo holds nothing for: ${sql}`);
    return rows[0].value;
  };
  const visitOf = (practice: string, clinician: string) =>
    one<string>(
      `select session_id as value from sessions where practice = '${practice}' and clinician = '${clinician}'
         and supervisor is null order by local_day desc, id limit 1`,
    );
  const importOf = (practice: string) =>
    one<number>(
      `select f.import_id as value from sessions v join import_files f on f.id = v.file_id
       where v.practice = '${practice}' order by v.id limit 1`,
    );
  const personOf = (somebody: Somebody) =>
    one<string>(`select id as value from users where email = '${accountOf(somebody).email}'`);
  const auditOf = async (practice: string | null, until: string | null): Promise<number> => {
    const { rows } = await client.query<{ id: number }>(
      "select id from audits where practice is not distinct from $1 and by = 'the tests'",
      [practice],
    );
    if (rows[0]) return rows[0].id;
    const made = await client.query<{ id: number }>(
      `insert into audits (practice, period, criteria, by, confirm_until)
       values ($1, '2026-Q1', '{isolation,hypochlorite-floor,chelator}', 'the tests', $2) returning id`,
      [practice, until],
    );
    return made.rows[0]?.id ?? 0;
  };
  // Those of a run before in the same home stand in nobody's way.
  await client.query(
    "update audits set set_aside_at = now(), set_aside_by = 'the tests' where by <> 'the tests'",
  );
  return {
    audits: { medlar: await auditOf("MEDLAR", "2199-01-01"), group: await auditOf(null, null) },
    visit: {
      own: await visitOf("MEDLAR", "M-03"),
      other: await visitOf("MEDLAR", "M-06"),
      spindle: await visitOf("SPINDLE", "S-21"),
    },
    imports: { medlar: await importOf("MEDLAR"), spindle: await importOf("SPINDLE") },
    held: {
      medlar: await one<string>(
        "select id::text as value from held where practice = 'MEDLAR' and state = 'held' limit 1",
      ),
    },
    people: {
      lead: await personOf("group lead"),
      spindleQuality: await personOf("SPINDLE quality officer"),
    },
  };
}
