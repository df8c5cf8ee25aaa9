import { inWords } from "./sent-json";

/** A PDF as a download; 404 where there is none. */
export function sentPdf(
  file: { readonly name: string; readonly bytes: Uint8Array<ArrayBuffer> } | null,
): Response {
  if (!file) return inWords(404, "There is no such audit among those you may see.");
  return new Response(file.bytes, {
    headers: {
      "content-type": "application/pdf",
      "content-disposition": `attachment; filename="${file.name}"`,
      "cache-control": "no-store",
    },
  });
}
