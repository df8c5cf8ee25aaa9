import type { Clinician } from "./clinician";
import type { Course } from "./make-course";
import type { Practice } from "./scenario";

/** One visit while its rows are being made. */
export type Visit = {
  readonly id: string;
  readonly practice: Practice;
  readonly chair: string;
  /** What the chair's pump delivers that day, mL/min; none where it has no line. */
  readonly flow: number | undefined;
  readonly clinician: Clinician;
  readonly day: string;
  /** Minutes after local midnight. */
  readonly start: number;
  readonly course: Course;
  readonly outcome: "completed" | "continuing" | "abandoned";
  /** The second visit of a course: canals are rinsed and filled. */
  readonly second: boolean;
  /** Rows about what happens later than this day are not made. */
  readonly until: string;
};
