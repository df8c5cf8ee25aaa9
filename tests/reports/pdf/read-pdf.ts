import { getDocument, OPS } from "pdfjs-dist/legacy/build/pdf.mjs";

export type ReadPage = {
  readonly width: number;
  readonly height: number;
  /** Texts with their places in points from the left and from the top. */
  readonly texts: readonly { words: string; left: number; right: number; base: number }[];
  /** How often each kind of drawing is asked for. */
  readonly drawings: ReadonlyMap<string, number>;
};

/** A PDF as another library reads it. */
export async function readPdf(bytes: Uint8Array) {
  const loading = getDocument({ data: bytes.slice(), useSystemFonts: true, verbosity: 0 });
  const pdf = await loading.promise;
  const { info } = await pdf.getMetadata();
  const outline: { title: string; page: number }[] = [];
  for (const { title, dest } of (await pdf.getOutline()) ?? []) {
    const target = Array.isArray(dest) ? dest[0] : null;
    outline.push({ title, page: target ? (await pdf.getPageIndex(target)) + 1 : 0 });
  }
  const pages: ReadPage[] = [];
  for (let number = 1; number <= pdf.numPages; number += 1) {
    pages.push(await readPage(await pdf.getPage(number)));
  }
  await loading.destroy();
  return { info: info as Record<string, unknown>, outline, pages };
}

type Page = Awaited<ReturnType<Awaited<ReturnType<typeof getDocument>["promise"]>["getPage"]>>;

async function readPage(page: Page): Promise<ReadPage> {
  const { width, height } = page.getViewport({ scale: 1 });
  const { items } = await page.getTextContent();
  const texts = items.flatMap((item) => {
    if (!("str" in item) || item.str.trim() === "") return [];
    const [, , , , left, up] = item.transform as number[];
    const from = left ?? 0;
    return [{ words: item.str, left: from, right: from + item.width, base: height - (up ?? 0) }];
  });
  const names = new Map(Object.entries(OPS).map(([name, code]) => [code as number, name]));
  const drawings = new Map<string, number>();
  for (const code of (await page.getOperatorList()).fnArray) {
    const name = names.get(code) ?? String(code);
    drawings.set(name, (drawings.get(name) ?? 0) + 1);
  }
  return { width, height, texts, drawings };
}
