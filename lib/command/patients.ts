import { holderReach } from "@/lib/access/reach";
import { byCommand } from "@/lib/reports/log/by-command";
import { rotateKey } from "@/lib/reports/rotate-key";
import { readOptions } from "./read-options";
import { CannotDo, type Done } from "./verb";

/** `patients rotate-key` */
export async function patients(args: string[]): Promise<Done> {
  const { positionals } = readOptions(args, [], { words: true });
  if (positionals.length !== 1 || positionals[0] !== "rotate-key")
    throw new CannotDo("What about patients: `patients rotate-key`.");
  const done = await byCommand("canal-audit patients rotate-key", {}, (home) =>
    rotateKey(holderReach().records, home),
  );
  return {
    text: `${done.patients} pseudonyms are wrapped by a new key; visits of one patient meet as before.\nKeep a new copy of the home's file patient-key: a copy made before opens these records no longer.`,
    json: done,
  };
}
