import { encodings, type FileLayout } from "@/lib/intake/mapping/file-layout";
import { workbookOf } from "./write-zip";

/** Draws a number from 0 up to 1. */
export type Random = () => number;

/** A file of another system, how it is written, how many rows stand below its header and how many of them cannot be cut into cells. */
export type FuzzFile = { bytes: Buffer; layout: FileLayout; rows: number; ragged: number };

export const fuzzNames = words(
  "Visit; Vorgang; Canal; Kanal; Patient; Tooth; Start; Datum; Uhrzeit; Lösung; Menge (ml); Dauer (min:s); Abgabe; Dam; Reset;" +
    "Files used; Separated; Operator; Room; Site; Type; Status; ; Visit; x\ty; 'q'; WL; Technique; By; constructor; __proto__",
);
export const fuzzCells = words(
  "; x; -; ?; n/p; V-1; MB; 36; UR6; 1; 3,5; 1.234; 1.234,5; 0:45; PT2M; 07/01/2026 08:50 AM; 01.07.2026; 08:50; NORTH; naocl;" +
    "2026-03-29T01:30:00; 1751360000; 00/00/0000; 31.02.2026; Hypochlorit 3,0 %; Spritze; RCT; Completed; rotary; yes; '; a'b;" +
    "\u202f1 000; é€; \ufffd; 😀; =1+1; 1e309; -0; 99999999999999999999",
);
const notations = ([".", ","] as const).flatMap((decimal) =>
  (["", ".", ",", " ", "'"] as const)
    .filter((thousands) => thousands !== decimal)
    .map((thousands) => ({ decimal, thousands })),
);

export function pick<Item>(random: Random, items: readonly Item[]): Item {
  return items[Math.floor(random() * items.length)] as Item;
}

export function upTo(random: Random, most: number): number {
  return Math.floor(random() * (most + 1));
}

export function fuzzLayout(random: Random): FileLayout {
  return {
    kind: pick(random, ["separated", "separated", "separated", "json", "json-lines", "workbook"]),
    encoding: pick(random, encodings),
    separator: pick(random, [",", ";", "\t", "|", "a", "."]),
    quote: pick(random, ['"', "'", ""]),
    headerLine: 1 + upTo(random, 4),
    ...pick(random, notations),
  };
}

/** Separated text as its layout says, quoted where that has quotes. */
export function fuzzSeparated(random: Random): FuzzFile {
  const separator = pick(random, [",", ";", "\t", "|"]);
  const layout: FileLayout = { ...fuzzLayout(random), kind: "separated", separator };
  const letters = layout.encoding === "windows-1252" ? /[^\x20-\x7e\xdf-\xff]/g : /(?!)/g;
  const written = (text: string) => {
    const plain = text.replace(letters, ".");
    if (layout.quote === "") return plain.replaceAll(separator, " ");
    const quoted = `${layout.quote}${plain.replaceAll(layout.quote, layout.quote.repeat(2))}${layout.quote}`;
    return quoted.replace(".", random() < 0.02 ? "\n" : ".");
  };
  const { header, rows, ragged } = table(random);
  const lines = Array.from({ length: layout.headerLine - 1 }, () => "Title");
  for (const texts of [header, ...rows]) {
    lines.push(texts.map(written).join(separator));
    if (random() < 0.1) lines.push("");
  }
  const text = lines.join(pick(random, ["\n", "\r\n"])) + pick(random, ["\n", ""]);
  return { bytes: encoded(text, layout.encoding), layout, rows: rows.length, ragged };
}

/** One array of objects, or an object a line, that leave out what they do not have, among items that are no rows. */
export function fuzzJson(random: Random): FuzzFile {
  const kind = pick(random, ["json", "json-lines"] as const);
  const value = () =>
    pick(random, [
      () => JSON.stringify(pick(random, fuzzCells)),
      () => pick(random, ["1", "3.5", "true", "null", "1e400", "12345678901234567890"]),
      () => pick(random, ["[]", '{"a":[{}]}', '"\\ud800"']),
    ])();
  const items = [`{"First":"V-1","Canal":"MB"}`];
  let ragged = 0;
  for (let row = upTo(random, 10); row > 0; row -= 1) {
    if (random() < 0.1) {
      items.push(
        pick(random, ["1", "[]", '"a"', "null", ...(kind === "json" ? [] : ["{]}", "{"])]),
      );
      ragged += 1;
      continue;
    }
    const keys = Array.from({ length: upTo(random, 6) }, () => pick(random, fuzzNames));
    items.push(`{${keys.map((key) => `${JSON.stringify(key)}:${value()}`).join(",")}}`);
  }
  const end = pick(random, ["\n", "\r\n"]);
  const text = kind === "json" ? `[${items.join(`,${end}`)}]` : items.join(end);
  return {
    bytes: Buffer.from(text),
    layout: { ...fuzzLayout(random), kind },
    rows: items.length,
    ragged,
  };
}

/** A workbook whose cells are texts, numbers, failed formulas and days, with rows above its header. */
export function fuzzWorkbook(random: Random): FuzzFile {
  const layout: FileLayout = { ...fuzzLayout(random), kind: "workbook" };
  const { header, rows, beyond } = table(random);
  const inline = (text: string) => {
    const plain = text.replace(/[<&\p{Cc}]/gu, ".");
    return `<c t="inlineStr"><is><t xml:space="preserve">${plain}</t></is></c>`;
  };
  const cell = (text: string) => {
    if (text.trim() === "") return "<c/>";
    if (random() < 0.2)
      return pick(random, ["<c><v>46206.39</v></c>", '<c t="e"><v>#REF!</v></c>']);
    return inline(text);
  };
  const title = Array.from(
    { length: layout.headerLine - 1 },
    () => `<row>${inline("Title")}</row>`,
  );
  const named = `<row>${header.map(inline).join("")}</row>`;
  const below = rows.map((texts) => `<row>${texts.map(cell).join("")}</row>`);
  const bytes = workbookOf("July", [...title, named, ...below].join(""));
  return { bytes, layout, rows: rows.length, ragged: beyond };
}

/** A header and rows, one in ten of another length: ragged, or with something beyond the header; none of them is blank, and none of the header's ends is. */
function table(random: Random) {
  const width = 1 + upTo(random, 8);
  const header = Array.from({ length: width }, (_, place) =>
    place === 0 || place === width - 1 ? `Name ${place}` : pick(random, fuzzNames),
  );
  const rows: string[][] = [];
  let ragged = 0;
  let beyond = 0;
  for (let row = upTo(random, 10); row > 0; row -= 1) {
    const length = random() < 0.9 ? width : 1 + upTo(random, 9);
    const texts = Array.from({ length }, () => pick(random, fuzzCells));
    if (texts.every((text) => text.trim() === "")) continue;
    const more = texts.slice(width).some((text) => text.trim() !== "");
    if (more) beyond += 1;
    if (more || length < width) ragged += 1;
    rows.push(texts);
  }
  return { header, rows, ragged, beyond };
}

function encoded(text: string, encoding: FileLayout["encoding"]): Buffer {
  if (encoding === "windows-1252") return Buffer.from(text, "latin1");
  if (encoding === "utf-16be") return Buffer.from(text, "utf16le").swap16();
  return Buffer.from(text, encoding === "utf-8" ? "utf8" : "utf16le");
}

/** Texts parted by semicolons; an apostrophe stands for a quote. */
function words(text: string): string[] {
  return text.split(";").map((word) => word.trimStart().replaceAll("'", '"'));
}
