import { canalName, canalNames } from "@/lib/records/canal-name";
import type { Column, Value } from "@/lib/records/column";
import { isOwnCode } from "@/lib/records/own-code";
import { isDay } from "@/lib/records/period";
import { choiceWords } from "./choice-words";
import { instant, type When } from "./instant";
import type { Problem } from "./problem";
import { rangeWords } from "./range-words";

/** Longest code taken; longer ones are most likely another column's text. */
const longestCode = 200;

/**
 * A cell (trimmed, not empty) as its column's value, or its problem. Tooth and patient need the rest of the row and are
 * checked in check-row.
 */
export function checkCell(column: Column, text: string, context: When): Value | Problem {
  switch (column.type) {
    case "code":
    case "tooth":
    case "patient":
      return code(text);
    case "choice": {
      const choice = text.toLowerCase();
      return column.choices?.includes(choice) || (column.alsoOwn && isOwnCode(choice))
        ? choice
        : { found: text, remedy: `write ${choiceWords(column)}` };
    }
    case "flag":
      return (
        flag(text) ?? {
          found: text,
          remedy: "write yes or no, or leave it empty where it is not recorded",
        }
      );
    case "number":
      return number(column, text, false);
    case "whole":
      return number(column, text, true);
    case "count": {
      const yes = flag(text);
      return yes === undefined
        ? number(column, text, true, "yes, no or a whole number")
        : Number(yes);
    }
    case "instant":
      return instant(text, context);
    case "day":
      return day(text, context.now);
    case "canal":
      return (
        canalName(text) ?? {
          found: text,
          remedy: `write a canal's name (${canalNames.join(", ")}, or unknown-1, unknown-2 …)`,
        }
      );
  }
}

function code(text: string): Value | Problem {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is looked for
  if (/[\u0000-\u001f\u007f]/.test(text))
    return {
      found: text,
      remedy: "it has a line break or another control character in it; take that out",
    };
  if (/[\ufffd\p{Surrogate}]/u.test(text))
    return {
      found: text,
      remedy: "it has a letter that cannot be read; save the file in UTF-8 and bring it in again",
    };
  if (/^#(N\/A|REF!|VALUE!|DIV\/0!|NAME\?|NULL!|NUM!)$/.test(text))
    return { found: text, remedy: "a formula of the sheet failed here; write the value itself" };
  if (text.length > longestCode)
    return {
      found: text,
      remedy: `it is longer than ${longestCode} characters; does it belong in another column?`,
    };
  return text;
}

function flag(text: string): boolean | undefined {
  const word = text.toLowerCase();
  return word === "yes" ? true : word === "no" ? false : undefined;
}

function number(
  column: Column,
  written: string,
  whole: boolean,
  kind = whole ? "a whole number" : "a number",
): Value | Problem {
  // Spreadsheets write the sign of a percentage with it.
  const text = column.unit === "%" ? written.replace(/ ?%$/, "") : written;
  if (!/^[-+]?(\d+\.?\d*|\.\d+)([eE][-+]?\d{1,3})?$/.test(text)) {
    const comma = /^[-+]?\d+,\d+$/.test(text) ? ` with a point, as ${text.replace(",", ".")}` : "";
    return { found: text, remedy: `write ${kind}${comma || rangeWords(column)}` };
  }
  const value = Number(text);
  const inRange =
    (column.least === undefined || value >= column.least) &&
    (column.most === undefined || value <= column.most) &&
    (column.over === undefined || value > column.over);
  if (!inRange || (whole && !Number.isInteger(value)))
    return { found: text, remedy: `write ${kind}${rangeWords(column)}` };
  // −0 is 0.
  return value + 0;
}

function day(text: string, now: Date): Value | Problem {
  if (!isDay(text)) return { found: text, remedy: "write a day of the calendar as 2026-07-03" };
  if (text < "1990-01-01")
    return { found: text, remedy: "the day is before 1990; is the year right?" };
  // The day may have begun already in a zone further east.
  if (Date.parse(text) > now.getTime() + 14 * 3_600_000)
    return { found: text, remedy: "the day is still to come; correct it" };
  return text;
}
