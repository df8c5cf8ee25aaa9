import { encode } from "uqr";

/** A QR code as one path of an SVG, a unit a module; the quiet margin of four modules is part of it. */
export function qrPath(text: string): { readonly size: number; readonly path: string } {
  const { data, size } = encode(text, { ecc: "M", border: 4 });
  const runs = data.flatMap((row, y) =>
    row.flatMap((dark, x) => (dark ? [`M${x} ${y}h1v1h-1z`] : [])),
  );
  return { size, path: runs.join("") };
}
