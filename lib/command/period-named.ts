import { readPeriod } from "@/lib/reports/read-period";
import { CannotDo } from "./verb";

/** The period a person named with --period. */
export function periodNamed(text: string | undefined) {
  if (!text)
    throw new CannotDo(
      "Say which period: --period 2026-Q3, 2026-07, 2026 or 2026-07-01..2026-07-31.",
    );
  const found = readPeriod(text);
  if (!found)
    throw new CannotDo(
      `"${text}" is no period; write 2026-Q3, 2026-07, 2026 or 2026-07-01..2026-07-31.`,
    );
  return found;
}
