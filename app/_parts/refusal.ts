/**
 * Next's forbidden() sets status 403 by an error whose digest is "<name>;403", and shows app/forbidden.tsx, which
 * is drawn before the refusal and cannot know its sentence. The digest does reach the browser, so the sentence
 * travels behind it as a third part. Without it (another form of digest, one day) forbidden.tsx shows instead.
 */
export function withSentence(forbidden: () => never, sentence: string): unknown {
  try {
    return forbidden();
  } catch (error) {
    if (isWithDigest(error)) error.digest = `${error.digest};${sentence}`;
    return error;
  }
}

/** The sentence that came with a refusal; undefined where the error is none. */
export function sentenceOf(error: unknown): string | undefined {
  if (!isWithDigest(error)) return undefined;
  const [, status, ...sentence] = error.digest.split(";");
  return status === "403" && sentence.length > 0 ? sentence.join(";") : undefined;
}

function isWithDigest(error: unknown): error is { digest: string } {
  return (
    typeof error === "object" &&
    error !== null &&
    "digest" in error &&
    typeof error.digest === "string"
  );
}
