import { readXml } from "./parse-xml";
import type { Parts } from "./zip-entries";

export type WorkbookSheet = { readonly title: string; readonly part: string };

/** More text than this in the shared strings is not kept in memory. */
const mostText = 200 * 1024 ** 2;

/** The sheets of a workbook in their order, hidden ones left out. */
export async function workbookSheets(parts: Parts): Promise<WorkbookSheet[]> {
  const targets = new Map<string, string>();
  await readXml(await parts.open("xl/_rels/workbook.xml.rels"), {
    open: (name, { Id, Target }) => {
      if (name === "Relationship" && Id && Target) targets.set(Id, Target.startsWith("/") ? Target.slice(1) : `xl/${Target}`);
    },
  });
  const sheets: WorkbookSheet[] = [];
  await readXml(await parts.open("xl/workbook.xml"), {
    open: (name, attributes) => {
      const part = targets.get(attributes["r:id"] ?? "");
      if (name === "sheet" && attributes.name && part && (attributes.state ?? "visible") === "visible") {
        sheets.push({ title: attributes.name, part });
      }
    },
  });
  return sheets;
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
      if (name === "si") texts.push(current);
    },
    text: (text) => {
      if (!within) return;
      length += text.length;
      if (length > mostText) throw new Error("it holds more text than can be read at once; save its sheets as CSV files");
      current += text;
    },
  });
  return texts;
}

/** Which cell styles show a date or time. */
export async function dateStyles(parts: Parts): Promise<Set<number>> {
  const dates = new Set<number>();
  if (!parts.names.includes("xl/styles.xml")) return dates;
  const own = new Map<number, string>();
  let withinCells = false;
  let style = 0;
  await readXml(await parts.open("xl/styles.xml"), {
    open: (name, attributes) => {
      if (name === "numFmt") own.set(Number(attributes.numFmtId), attributes.formatCode ?? "");
      if (name === "cellXfs") withinCells = true;
      if (name === "xf" && withinCells) {
        if (isDate(Number(attributes.numFmtId), own)) dates.add(style);
        style += 1;
      }
    },
    close: (name) => {
      if (name === "cellXfs") withinCells = false;
    },
  });
  return dates;
}

/** Formats 14–22 and 45–47 are dates and times by ECMA-376, part 1, 18.8.30; own ones where they have a date's letters. */
function isDate(format: number, own: ReadonlyMap<number, string>): boolean {
  const code = own.get(format)?.replace(/"[^"]*"|\[[^\]]*\]|\\./g, "");
  return code === undefined ? (format >= 14 && format <= 22) || (format >= 45 && format <= 47) : /[ymdhs]/i.test(code);
}
