import type { Criterion } from "@/lib/protocol/criterion";

/** What is measured: a measure by its id, or criterion/<id> with the criterion that units are judged by. */
export type Measured = { readonly measure: string; readonly criterion?: Criterion };
