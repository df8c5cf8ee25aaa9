import { type ParseArgsConfig, parseArgs } from "node:util";
import { CannotDo } from "./verb";

/**
 * The options and other words after a verb; `--json` is every verb's. `flags` take no value, `many` may come several times.
 *
 * @throws CannotDo in one sentence where an option is unknown, lacks its value, or a word stands where none is taken.
 */
export function readOptions<const Name extends string>(
  args: readonly string[],
  names: readonly Name[],
  how: { words?: boolean; flags?: readonly string[]; many?: readonly string[] } = {},
): {
  values: Partial<Record<Name, string>>;
  positionals: string[];
  flags: ReadonlySet<string>;
  many: Readonly<Record<string, readonly string[]>>;
} {
  const options: ParseArgsConfig["options"] = { json: { type: "boolean" } };
  for (const name of names) options[name] = { type: "string" };
  for (const name of how.flags ?? []) options[name] = { type: "boolean" };
  for (const name of how.many ?? []) options[name] = { type: "string", multiple: true };
  try {
    const { values, positionals } = parseArgs({
      args: [...args],
      options,
      allowPositionals: how.words ?? false,
    });
    const empty = names.find((name) => values[name] === "");
    // An empty practice, as of a variable that is not set, must not mean all of them.
    if (empty) throw new CannotDo(`--${empty} has nothing after it.`);
    const flags = new Set((how.flags ?? []).filter((name) => values[name] === true));
    const many = Object.fromEntries(
      (how.many ?? []).map((name) => [name, (values[name] ?? []) as string[]]),
    );
    return { values: values as Partial<Record<Name, string>>, positionals, flags, many };
  } catch (trouble) {
    throw trouble instanceof CannotDo
      ? trouble
      : new CannotDo(inPlainWords(trouble, [...names, ...(how.flags ?? []), ...(how.many ?? [])]));
  }
}

/** Node's words go on about how arguments are written, so only the one they are about is taken from them. */
function inPlainWords(trouble: unknown, names: readonly string[]): string {
  const { code, message } = trouble as NodeJS.ErrnoException;
  const about = /'(.*?)(?: <value>)?'/s.exec(message)?.[1] ?? "";
  if (code === "ERR_PARSE_ARGS_UNKNOWN_OPTION") {
    const known = [...names, "json"].map((name) => `--${name}`).join(", ");
    return `There is no option ${about} here; the options are ${known}.`;
  }
  if (code === "ERR_PARSE_ARGS_UNEXPECTED_POSITIONAL") return `"${about}" is one word too many.`;
  if (about.endsWith("--json")) return "--json takes no value.";
  return `${about} needs a value after it.`;
}
