import type { About } from "@/lib/views/protocol/about";
import type { Path } from "@/lib/views/protocol/edit/at-path";
import type { EditedCondition } from "@/lib/views/protocol/edit/editable";

/** A group of rows and where it stands. */
export type GroupProps = {
  at: Path;
  condition: EditedCondition;
  about: About;
  /** What the group says, as a legend: "Met if". */
  legend: string;
  /** What it comes to without a row. */
  empty: string;
  depth: number;
};
