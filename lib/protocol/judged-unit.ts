import type { Values } from "@/lib/records/column";

/** An item of a list: its fields, and where it stands. */
export type ListItem = {
  readonly fields: Values;
  /** Items of one place follow each other by rank; items of different places have no order between them. */
  readonly place: string | null;
  readonly rank: number | null;
  /** Where it stands among the others is not known. */
  readonly loose: boolean;
  /** Table and number of its row, as irrigation/12; null of an item that only says that something is missing. */
  readonly row: string | null;
};

/**
 * All that a criterion looks at of one unit. A list that is not known to be complete holds an item of which nothing
 * is known.
 */
export type JudgedUnit = {
  readonly fields: Values;
  readonly lists: Readonly<Record<string, readonly ListItem[]>>;
  /** Why its canal is outside the treatment population. */
  readonly exclusion: string | null;
  /** The coded reason of an exception: a step's, the canal's own, or the visit's, in this order. */
  readonly exception: string | null;
};
