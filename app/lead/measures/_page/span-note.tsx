import { Link } from "@/app/_parts/link";
import { measureSpan } from "@/lib/views/measure-span";

/** Says where a rate with few units opens on four quarters, and leads to the quarter itself and back. */
export function SpanNote(props: Parameters<typeof measureSpan>[0]) {
  const note = measureSpan(props);
  if (!note) return null;
  return (
    <p className="note">
      {note.words} <Link href={note.href}>{note.hrefWords}</Link>
    </p>
  );
}
