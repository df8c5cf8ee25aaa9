import type { ReportDocument } from "@/lib/views/document/document";
import { printable } from "./printable";

/** A document of which every word can be drawn. */
export function printableDocument(document: ReportDocument): ReportDocument {
  return { ...everyWord(document), language: document.language };
}

function everyWord<Of>(value: Of): Of {
  if (typeof value === "string") return printable(value) as Of;
  if (Array.isArray(value)) return value.map(everyWord) as Of;
  if (value === null || typeof value !== "object") return value;
  return Object.fromEntries(
    Object.entries(value).map(([name, inner]) => [name, everyWord(inner)]),
  ) as Of;
}
