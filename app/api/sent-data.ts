import { inWords } from "./sent-json";

/** A JSON file as a download; 404 where there is none. */
export function sentData(file: { readonly name: string; readonly text: string } | null): Response {
  if (!file) return inWords(404, "There is no such person.");
  return new Response(file.text, {
    headers: {
      "content-type": "application/json; charset=utf-8",
      "content-disposition": `attachment; filename="${file.name}"`,
      "cache-control": "no-store",
    },
  });
}
