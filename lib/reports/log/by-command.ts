import { commandLine } from "@/lib/records/log-line";
import { writeLines } from "@/lib/store/log/write-lines";
import type { Logged } from "@/lib/views/log/logged-pages";
import { loggedVerbs, type VerbName } from "@/lib/views/log/logged-verbs";
import { withHome } from "../with-home";
import { aboutOf } from "./about-of";

type About = Readonly<Record<string, string | undefined>>;

/** As withHome, for a verb: what was done leaves a line in the log, by "command line". */
export async function byCommand<Result>(
  verb: VerbName,
  about: About,
  work: Parameters<typeof withHome<Result>>[0],
): Promise<Result> {
  return withHome(async (home) => {
    const result = await work(home);
    await noteCommand(verb, about);
    return result;
  });
}

/** A line for what a verb did while it goes on: the watch takes one file after the other. */
export async function noteCommand(verb: VerbName, about: About): Promise<void> {
  const logged: Logged = loggedVerbs[verb];
  if ("none" in logged) return;
  const line = { kind: logged.kind, person: commandLine, what: verb };
  await writeLines([{ ...line, about: aboutOf(Object.entries(about)) }]);
}
