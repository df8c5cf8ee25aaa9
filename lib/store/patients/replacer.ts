const LENGTH = 32;

/**
 * Replaces pseudonyms wherever they stand in a text: a case may be named after its patient, so that letters stand right beside. Of a run of
 * hexadecimal digits every place is tried, since where in it a pseudonym begins cannot be seen.
 */
export function replacer(after: ReadonlyMap<string, string>): (text: string) => string {
  return (text) =>
    text.replaceAll(/[0-9a-f]{32,}/g, (run) => {
      let written = "";
      for (let at = 0; at < run.length; ) {
        const found = after.get(run.slice(at, at + LENGTH));
        written += found ?? run[at];
        at += found ? LENGTH : 1;
      }
      return written;
    });
}
