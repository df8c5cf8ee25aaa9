/** Sends a JSON text to the tool; answers what came back, or a sentence that says why nothing did. */
export async function sendJson<Answer>(
  address: string,
  json?: string,
): Promise<Answer | { readonly sentence: string }> {
  try {
    const response = await fetch(
      address,
      json === undefined
        ? {}
        : {
            method: "POST",
            headers: { "content-type": "application/json" },
            body: json,
            // What is short enough is sent even while the page is being left.
            keepalive: json.length < 60_000,
          },
    );
    const answer: unknown = await response.json();
    if (response.ok) return answer as Answer;
    if (typeof answer === "object" && answer !== null && "sentence" in answer)
      return { sentence: String(answer.sentence) };
  } catch {
    // No connection, or no JSON: the tool itself failed.
  }
  return { sentence: "The tool does not answer just now; what you change is not kept." };
}
