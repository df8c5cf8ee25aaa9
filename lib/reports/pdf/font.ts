import { existsSync } from "node:fs";
import { join } from "node:path";
import { Font } from "@react-pdf/renderer";
import { projectFolder } from "@/lib/store/home/project-folder";

export const fontFamily = "Source Sans 3";

export type FontFace = "plain" | "strong" | "slanted";

const faces = {
  plain: { file: "400Regular/SourceSans3_400Regular.ttf", fontWeight: 400, fontStyle: "normal" },
  strong: { file: "600SemiBold/SourceSans3_600SemiBold.ttf", fontWeight: 600, fontStyle: "normal" },
  slanted: {
    file: "400Regular_Italic/SourceSans3_400Regular_Italic.ttf",
    fontWeight: 400,
    fontStyle: "italic",
  },
} as const;

/** Makes the font known to the renderer and opens its files, so that words can be measured. */
export async function openFont(): Promise<void> {
  opened ??= open().catch((reason) => {
    opened = undefined;
    throw reason;
  });
  await opened;
}

let opened: Promise<void> | undefined;

async function open(): Promise<void> {
  const folder = fontFolder();
  Font.register({
    family: fontFamily,
    fonts: Object.values(faces).map(({ file, ...face }) => ({ src: join(folder, file), ...face })),
  });
  // A word is never divided by a hyphen that nobody wrote.
  Font.registerHyphenationCallback((word) => [word]);
  await Promise.all(
    Object.values(faces).map(({ fontWeight, fontStyle }) =>
      Font.load({ fontFamily, fontWeight, fontStyle }),
    ),
  );
}

/** Built code no longer stands where the project's code does; then the server runs in the project's folder. */
function fontFolder(): string {
  const folders = [projectFolder, process.cwd()].map((folder) => join(folder, fontPackage));
  const found = folders.find((folder) => existsSync(folder));
  if (!found) throw new Error(`The font of the PDF is not installed: ${fontPackage}`);
  return found;
}

const fontPackage = "node_modules/@expo-google-fonts/source-sans-3";

/** The style of a face. */
export function faceStyle(face: FontFace) {
  const { fontWeight, fontStyle } = faces[face];
  return { fontFamily, fontWeight, fontStyle };
}

/** How wide words are on one line, in points. The font has to be open. */
export function widthOf(words: string, size: number, face: FontFace = "plain"): number {
  const key = `${face} ${words}`;
  const before = measured.get(key);
  if (before !== undefined) return before * size;
  const font = fontOf(face);
  const width = font.layout(words).advanceWidth / font.unitsPerEm;
  if (measured.size >= mostMeasured) measured.clear();
  measured.set(key, width);
  return width * size;
}

/** Widths at size 1: a report says the same words many times, and shaping them is slow. */
const measured = new Map<string, number>();
const mostMeasured = 20_000;

/** Whether the font can draw a sign. */
export function draws(sign: string): boolean {
  return fontOf("plain").hasGlyphForCodePoint(sign.codePointAt(0) ?? 0);
}

function fontOf(face: FontFace) {
  const font = Font.getFont({ fontFamily, ...faces[face] }).data;
  if (!font) throw new Error("The font is not open yet");
  return font;
}
