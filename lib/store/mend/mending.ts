import type { TableName } from "@/lib/records/tables";
import type { StagedRow } from "../import/staging";
import type { BenchRow } from "./bench-rows";

type Cells = Readonly<Record<string, string>>;

/** A held row made anew, with its cells before and after; undefined where the mend does not concern it. */
export type Remake = (
  row: BenchRow,
) => { readonly before: Cells; readonly cells: Cells; readonly row: StagedRow } | undefined;

export type Mending = {
  readonly table: TableName;
  /** What is done, by column, as it is kept. */
  readonly changes: unknown;
  readonly reason?: string | undefined;
  /** The mapping that the rule joined, in words. */
  readonly mapping?: string | undefined;
  /** IANA zone of practices not yet known. */
  readonly zone: string;
  /** Only tell what would become of the rows: everything is as before afterwards. */
  readonly tryOnly?: boolean;
  /** How many rows the answer shows one by one. */
  readonly examples: number;
};
