import { readXml } from "./parse-xml";
import type { Parts } from "./zip-entries";

export type WorkbookSheet = { readonly title: string; readonly part: string };

/** More text than this in the shared strings is not kept in memory. */
const mostText = 200 * 1024 ** 2;

/** The sheets of a workbook in their order, hidden ones left out, and the day its dates are counted from. */
export async function workbookSheets(
  parts: Parts,
): Promise<{ sheets: WorkbookSheet[]; from1904: boolean }> {
  const targets = new Map<string, string>();
  await readXml(await parts.open("xl/_rels/workbook.xml.rels"), {
    open: (name, { Id, Target }) => {
      if (name === "Relationship" && Id && Target)
        targets.set(Id, Target.startsWith("/") ? Target.slice(1) : `xl/${Target}`);
    },
  });
  const sheets: WorkbookSheet[] = [];
  let from1904 = false;
  await readXml(await parts.open("xl/workbook.xml"), {
    open: (name, attributes) => {
      if (name === "workbookPr") from1904 = ["1", "true"].includes(attributes.date1904 ?? "");
      const part = targets.get(relation(attributes));
      if (
        name === "sheet" &&
        attributes.name &&
        part &&
        (attributes.state ?? "visible") === "visible"
      ) {
        sheets.push({ title: attributes.name, part });
      }
    },
  });
  return { sheets, from1904 };
}

/** The id of a sheet's part, whatever prefix the file gives the namespace of relationships. */
function relation(attributes: Readonly<Record<string, string>>): string {
  return Object.entries(attributes).find(([name]) => name.endsWith(":id"))?.[1] ?? "";
}

/** The texts that cells refer to by number. */
export async function sharedStrings(parts: Parts): Promise<string[]> {
  if (!parts.names.includes("xl/sharedStrings.xml")) return [];
  const texts: string[] = [];
  let current = "";
  let within = false;
  let phonetic = false;
  let length = 0;
  await readXml(await parts.open("xl/sharedStrings.xml"), {
    open: (name) => {
      if (name === "si") current = "";
      if (name === "rPh") phonetic = true;
      within = name === "t" && !phonetic;
    },
    close: (name) => {
      if (name === "rPh") phonetic = false;
      if (name === "t") within = false;
      if (name !== "si") return;
      texts.push(current);
      // Empty texts take room too.
      length += 16;
      if (length > mostText) throw tooMuchText();
    },
    text: (text) => {
      if (!within) return;
      length += text.length;
      if (length > mostText) throw tooMuchText();
      current += text;
    },
  });
  return texts;
}

function tooMuchText(): Error {
  return new Error("it holds more text than can be read at once");
}

/** Which cell styles show a date or time, and which a percentage. */
export type CellStyles = {
  readonly dates: ReadonlySet<number>;
  readonly percentages: ReadonlySet<number>;
};

export async function cellStyles(parts: Parts): Promise<CellStyles> {
  const dates = new Set<number>();
  const percentages = new Set<number>();
  if (!parts.names.includes("xl/styles.xml")) return { dates, percentages };
  const own = new Map<number, string>();
  let withinCells = false;
  let style = 0;
  await readXml(await parts.open("xl/styles.xml"), {
    open: (name, attributes) => {
      if (name === "numFmt") own.set(Number(attributes.numFmtId), attributes.formatCode ?? "");
      if (name === "cellXfs") withinCells = true;
      if (name === "xf" && withinCells) {
        const format = Number(attributes.numFmtId);
        if (isDate(format, own)) dates.add(style);
        if (isPercentage(format, own)) percentages.add(style);
        style += 1;
      }
    },
    close: (name) => {
      if (name === "cellXfs") withinCells = false;
    },
  });
  return { dates, percentages };
}

/** Formats 14–22 and 45–47 are dates and times by ECMA-376, part 1, 18.8.30; own ones where they have a date's letters. */
function isDate(format: number, own: ReadonlyMap<number, string>): boolean {
  const code = bare(own.get(format));
  return code === undefined
    ? (format >= 14 && format <= 22) || (format >= 45 && format <= 47)
    : /[ymdhs]/i.test(code);
}

/** Formats 9 and 10 are percentages by the same list. */
function isPercentage(format: number, own: ReadonlyMap<number, string>): boolean {
  return bare(own.get(format))?.includes("%") ?? (format === 9 || format === 10);
}

/** A format's code without its quoted and bracketed texts. */
function bare(code: string | undefined): string | undefined {
  return code?.replace(/"[^"]*"|\[[^\]]*\]|\\./g, "");
}
