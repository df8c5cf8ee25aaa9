import Link from "next/link";
import { type LookLine, nothingToSee } from "@/lib/views/lead-look";

/** What needs a look, in sentences, and what is not judged yet. */
export function NeedsALook(props: { lines: readonly LookLine[] }) {
  return (
    <>
      {props.lines.length === 0 ? (
        <p>{nothingToSee}</p>
      ) : (
        <ul className="notes">
          {props.lines.map((line) => (
            <li key={line.words} className="note-look">
              {line.words}
              {line.href ? (
                <>
                  {" "}
                  <Link href={line.href}>{line.hrefWords}</Link>
                </>
              ) : null}
            </li>
          ))}
        </ul>
      )}
    </>
  );
}
