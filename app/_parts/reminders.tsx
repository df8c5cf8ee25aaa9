import { Link } from "@/app/_parts/link";
import { remindersFor } from "@/lib/reports/audits/reminders";
import { asWhoAsks, currentViewer } from "@/lib/reports/viewer";

/** What audits ask of whoever looks; nothing where they ask nothing. */
export async function Reminders() {
  const reminders = await asWhoAsks(async () => remindersFor(await currentViewer()));
  if (reminders.length === 0) return null;
  return (
    <section aria-label="What audits ask of you" className="reminders not-printed">
      <ul className="notes">
        {reminders.map((one) => (
          <li key={one.words} className="note-look">
            {one.href ? <Link href={one.href}>{one.words}</Link> : one.words}
          </li>
        ))}
      </ul>
    </section>
  );
}
