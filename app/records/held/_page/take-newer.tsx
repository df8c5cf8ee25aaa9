import { Link } from "@/app/_parts/link";

/** The way from a held row that contradicts an accepted one to both versions side by side. */
export function TakeNewer(props: { id: string; kind: string }) {
  if (props.kind !== "contradiction") return null;
  return (
    <p>
      <Link href={`/records/corrections?row=${props.id}`}>Compare both versions, and take one</Link>
    </p>
  );
}
