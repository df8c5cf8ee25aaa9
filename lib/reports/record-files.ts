/** Endings of the files that can hold records, in the record format or as other systems write them. */
export const recordFileEndings: readonly string[] = [
  ".csv",
  ".xlsx",
  ".json",
  ".ndjson",
  ".jsonl",
  ".tsv",
  ".txt",
  ".log",
  ".dat",
];
