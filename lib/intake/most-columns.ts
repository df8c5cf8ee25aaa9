import { UnreadableFile } from "./unreadable-file";

/** More columns than this are no table of treatment records. */
export const mostColumns = 2000;

/** @throws UnreadableFile where there are too many columns, before anything is done for each of them. */
export function refuseManyColumns(columns: number, name: string): void {
  if (columns > mostColumns)
    throw new UnreadableFile(
      name,
      `it has more than ${mostColumns} columns; is it a table of treatments?`,
    );
}
