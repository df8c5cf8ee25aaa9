import { textWithin } from "@/lib/reports/text-within";

/** A sentence with a status. */
export function inWords(status: number, sentence: string): Response {
  return Response.json({ sentence }, { status });
}

/** What one of the tool's own pages sends as JSON; else the answer that says why it is not taken. */
export async function sentJson(request: Request): Promise<{ json: unknown } | Response> {
  const site = request.headers.get("sec-fetch-site");
  // A form of another page must not change anything under their name.
  if (site && site !== "same-origin" && site !== "none")
    return inWords(403, "This form is not of this tool.");
  const text = await textWithin(request, longest);
  if (text === null) return inWords(413, "This is too large.");
  try {
    return { json: JSON.parse(text) };
  } catch {
    return inWords(400, "This is no JSON.");
  }
}

/** In bytes: the sample of a file and its mapping are far below it. */
const longest = 4_000_000;
