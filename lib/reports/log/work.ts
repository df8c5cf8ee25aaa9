import type { LogLine } from "@/lib/records/log-line";
import { writeLines } from "@/lib/store/log/write-lines";
import { loggedWork, type WorkName } from "@/lib/views/log/logged-work";

/**
 * A line for what goes on with nobody waiting for it, written as soon as it is done.
 *
 * @param person whose doing it is: an account, or what acts without one (lib/records/log-line)
 * @param about numbers and codes alone
 */
export async function noteWork(
  work: WorkName,
  person: LogLine["person"],
  about: Readonly<Record<string, string | number | null>>,
): Promise<void> {
  const said = Object.entries(about).flatMap(([name, value]) =>
    value === null ? [] : [`${name}=${encodeURI(String(value))}`],
  );
  await writeLines([{ kind: loggedWork[work].kind, person, what: work, about: said.join(" ") }]);
}
