/**
 * The body of a request as text; null where it has more than so many bytes. What it says of its length is believed only
 * where that is too much already, and no more is read than is allowed.
 */
export async function textWithin(request: Request, most: number): Promise<string | null> {
  if (Number(request.headers.get("content-length") ?? 0) > most) return null;
  const reader = request.body?.getReader();
  const parts: Uint8Array[] = [];
  let read = 0;
  while (reader) {
    const { done, value } = await reader.read();
    if (done) break;
    read += value.length;
    if (read > most) {
      await reader.cancel();
      return null;
    }
    parts.push(value);
  }
  return Buffer.concat(parts).toString("utf8");
}
