import { Link } from "@/app/_parts/link";
import { nothingToSee } from "@/lib/views/lead-look";
import type { LookLine } from "@/lib/views/lead-look-criteria";
import { unbroken } from "@/lib/views/unbroken";

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
              {unbroken(line.words)}
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
