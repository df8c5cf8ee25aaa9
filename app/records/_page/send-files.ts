/** Where the import is told, or a sentence that says why there is none. */
export type Sent = { readonly location: string } | { readonly sentence: string };

/** Sends files to be imported and tells how far it has come; fetch cannot tell, hence the older request. */
export function sendFiles(
  files: readonly File[],
  zone: string,
  tell: (words: string) => void,
): Promise<Sent> {
  const form = new FormData();
  form.set("zone", zone);
  for (const file of files) form.append("files", file, file.name);
  const request = new XMLHttpRequest();
  tell("Sending …");
  request.upload.onprogress = ({ loaded, total }) => {
    if (total > 0)
      tell(
        loaded < total
          ? `Sending: ${Math.floor((loaded / total) * 100)} % of it is there.`
          : "Sent. The import begins.",
      );
  };
  return new Promise((resolve) => {
    request.onload = () => resolve(readAnswer(request.responseText));
    request.onerror = () =>
      resolve({ sentence: "The connection broke off. Nothing was brought in; try again." });
    request.open("POST", "/api/records/import");
    request.setRequestHeader("accept", "application/json");
    request.send(form);
  });
}

function readAnswer(text: string): Sent {
  try {
    const answer: unknown = JSON.parse(text);
    if (typeof answer === "object" && answer !== null) {
      if ("location" in answer && typeof answer.location === "string")
        return { location: answer.location };
      if ("sentence" in answer && typeof answer.sentence === "string")
        return { sentence: answer.sentence };
    }
  } catch {
    // No JSON: the tool itself failed.
  }
  return {
    sentence:
      "The tool could not take the files. Nothing was brought in; try again, or look at its log.",
  };
}
