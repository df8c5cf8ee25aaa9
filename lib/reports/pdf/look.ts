/** The colours of the screen (app/_look/tokens.css) on white paper. */
export const colours = {
  paper: "#ffffff",
  wash: "#f3f1ec",
  ink: "#1e2126",
  inkSoft: "#4d545d",
  rule: "#d9d5cc",
  ruleStrong: "#8a8578",
  accent: "#6b2a58",
  data: "#0072b2",
  beyond: "#d55e00",
  reference: "#4d545d",
} as const;

/** In points. */
export const sizes = { title: 21, part: 14.5, heading: 11, body: 9.5, table: 8.5, small: 8 };

export const leading = 1.3;

/** A4 in points; a wide part turns it on its side. */
export const sheet = { short: 595.28, long: 841.89, side: 51, top: 62, bottom: 60 };

export function sheetHeight(wide: boolean): number {
  return wide ? sheet.short : sheet.long;
}

export type Room = { readonly width: number; readonly height: number };

/** What is written on a sheet has to find room in this. */
export function roomOn(wide: boolean): Room {
  return {
    width: (wide ? sheet.long : sheet.short) - 2 * sheet.side,
    height: sheetHeight(wide) - sheet.top - sheet.bottom,
  };
}

/** Lines longer than this are hard to read, and charts wider than this tell nothing more. */
export const readingWidth = 560;
