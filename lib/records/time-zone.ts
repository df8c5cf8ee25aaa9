/** Is the text the name of a time zone that this machine knows. */
export function isTimeZone(text: string): boolean {
  try {
    new Intl.DateTimeFormat("en", { timeZone: text });
    return true;
  } catch {
    return false;
  }
}
