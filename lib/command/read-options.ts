import { type ParseArgsConfig, parseArgs } from "node:util";
import { CannotDo } from "./verb";

/**
 * The options and other words after a verb; `--json` is every verb's.
 *
 * @throws CannotDo in one sentence where an option is unknown, lacks its value, or a word stands where none is taken.
 */
export function readOptions<const Name extends string>(
  args: readonly string[],
  names: readonly Name[],
  how: { words?: boolean } = {},
): { values: Partial<Record<Name, string>>; positionals: string[] } {
  const options: ParseArgsConfig["options"] = { json: { type: "boolean" } };
  for (const name of names) options[name] = { type: "string" };
  try {
    const { values, positionals } = parseArgs({
      args: [...args],
      options,
      allowPositionals: how.words ?? false,
    });
    const empty = names.find((name) => values[name] === "");
    // An empty practice, as of a variable that is not set, must not mean all of them.
    if (empty) throw new CannotDo(`--${empty} has nothing after it.`);
    return { values: values as Partial<Record<Name, string>>, positionals };
  } catch (trouble) {
    throw trouble instanceof CannotDo ? trouble : new CannotDo(inPlainWords(trouble, names));
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
