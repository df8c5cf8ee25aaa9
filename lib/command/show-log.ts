import { holderReach } from "@/lib/access/reach";
import { byCommand } from "@/lib/reports/log/by-command";
import { checkLog } from "@/lib/reports/log/check-log";
import { logLines } from "@/lib/reports/log/log-page";
import { readOptions } from "./read-options";
import { CannotDo, type Done } from "./verb";

const atMost = 1000;

/** `log [--from DAY] [--person EMAIL]`, newest first, and `log --check [--head LINE:HASH]`. */
export async function showLog(args: string[]): Promise<Done> {
  const { values, flags } = readOptions(args, ["from", "person", "head"], { flags: ["check"] });
  if (flags.has("check")) return check(values.head);
  if (values.head) throw new CannotDo("--head belongs to --check.");
  const answer = await byCommand("canal-audit log", { day: values.from }, () =>
    logLines(holderReach().people, { from: values.from, email: values.person, limit: atMost }),
  );
  if ("wrong" in answer) throw new CannotDo(answer.wrong ?? "");
  const lines = answer.views.map(({ id, at, who, did, what, about }) =>
    [id, at, who, did, what, about].filter((one) => one !== "").join("  "),
  );
  const more = lines.length === atMost ? [`The newest ${atMost}; --from and --person narrow.`] : [];
  return {
    text: [...lines, ...more].join("\n") || "No line.",
    json: { lines: answer.lines },
  };
}

async function check(head: string | undefined): Promise<Done> {
  const [, id, hash] = /^(\d+):([0-9a-f]{64})$/.exec(head ?? "") ?? [];
  if (head && !hash) throw new CannotDo("--head takes LINE:HASH, as an earlier check told it.");
  const noted = id && hash ? { id: Number(id), hash } : undefined;
  const found = await byCommand("canal-audit log --check", {}, () =>
    checkLog(holderReach().people, noted),
  );
  if (found.broken) throw new CannotDo(`The log is broken. ${found.broken}`);
  const at = found.head ? `${found.head.id}:${found.head.hash}` : "none";
  return {
    text: `The log holds: ${found.lines} lines, each follows from the one before.\nHead ${at}\nNote the head down elsewhere; --head compares a later log with it.`,
    json: found,
  };
}
