import type { FlagLevels } from "@/lib/statistics/flags";

/**
 * The levels in force as long as nobody has chosen others: where nobody differs, at most 5 pages in 100 show a look and
 * 2 in 1,000 a look first, the shares that lie outside the 95 % and 99.8 % limits of a funnel plot (Spiegelhalter 2005,
 * Stat Med 24:1185).
 */
export const standardLevels: FlagLevels = { look: 0.05, lookFirst: 0.002 };
