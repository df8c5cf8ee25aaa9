import { expect, test } from "vitest";
import { exportFormat, exportFormatOf } from "@/lib/views/export-format";

// Expected values: the project's own names of formats; .json and application/fhir+json are common practice for FHIR in JSON.

test("a file's name says its format, by the longest ending that fits", () => {
  expect(exportFormatOf("report.csv")).toBe("csv");
  expect(exportFormatOf("report.XLSX")).toBe("xlsx");
  expect(exportFormatOf("report.json")).toBe("json");
  expect(exportFormatOf("report.fhir.json")).toBe("fhir");
  expect(exportFormatOf("fhir.txt")).toBeUndefined();
});

test("a format is asked for by its name", () => {
  expect(exportFormat("fhir")).toBe("fhir");
  expect(exportFormat("toString")).toBeUndefined();
});
