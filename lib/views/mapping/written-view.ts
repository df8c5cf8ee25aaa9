import type { FileDraft } from "./draft";
import { encodingWords, separatorWords } from "./file-words";
import type { Choice } from "./terms";

/** How a file is written, each part with what it may be instead. */
export type WrittenView = {
  readonly parts: readonly WrittenPart[];
  /** Lines that could not be cut into the columns; empty where there were none. */
  readonly ragged: string;
};

export type WrittenPart = {
  /** Of the layout: what the form sends back. */
  readonly name: string;
  readonly words: string;
  readonly value: string;
  /** Empty where it is a number that is typed. */
  readonly options: readonly Choice[];
  /** "certain" or "likely", with what was seen; empty where nothing was. */
  readonly why: string;
};

type Recognised = {
  readonly layout: FileDraft;
  readonly readings: readonly {
    readonly about: string;
    readonly sure: string;
    readonly why: string;
  }[];
  readonly ragged: number;
  readonly sheets: readonly string[];
};

/** What of the layout can be settled by hand, for the kind of file that it is. */
export function writtenView({ layout, readings, ragged, sheets }: Recognised): WrittenView {
  const parts = (partsOf[layout.kind] ?? []).map(({ name, words, options }): WrittenPart => {
    const reading = readings.find(({ about }) => about === name);
    const value = String(layout[name] ?? "");
    return {
      name,
      words,
      value,
      options: name === "sheet" ? sheets.map((one) => ({ value: one, words: one })) : options,
      why: reading ? `${reading.sure === "certain" ? "Certain" : "Likely"}: ${reading.why}` : "",
    };
  });
  return {
    parts,
    ragged:
      ragged === 0
        ? ""
        : `${ragged} ${ragged === 1 ? "line has" : "lines have"} not as many cells as there are columns; they would be held.`,
  };
}

type Part = { name: keyof FileDraft; words: string; options: readonly Choice[] };

const headerLine: Part = { name: "headerLine", words: "Line of the column names", options: [] };
const numbers: readonly Part[] = [
  {
    name: "decimal",
    words: "Decimal mark",
    options: [
      { value: ".", words: "point: 2.5" },
      { value: ",", words: "comma: 2,5" },
    ],
  },
  {
    name: "thousands",
    words: "Between thousands",
    options: [
      { value: "", words: "nothing: 1200" },
      { value: ".", words: "point: 1.200" },
      { value: ",", words: "comma: 1,200" },
      { value: " ", words: "blank: 1 200" },
      { value: "'", words: "apostrophe: 1'200" },
    ],
  },
];
const partsOf: Readonly<Record<string, readonly Part[]>> = {
  separated: [
    {
      name: "encoding",
      words: "Letters are written in",
      options: Object.entries(encodingWords).map(([value, words]) => ({ value, words })),
    },
    {
      name: "separator",
      words: "Between two cells",
      options: Object.entries(separatorWords).map(([value, words]) => ({ value, words })),
    },
    {
      name: "quote",
      words: "Round cells",
      options: [
        { value: '"', words: 'double quotes "' },
        { value: "'", words: "single quotes '" },
        { value: "", words: "nothing; quotes have no meaning" },
      ],
    },
    headerLine,
    ...numbers,
  ],
  workbook: [{ name: "sheet", words: "Sheet", options: [] }, headerLine, ...numbers],
  json: numbers,
  "json-lines": numbers,
};
