import { forbidden } from "next/navigation";
import { after } from "next/server";
import { Refused } from "@/lib/access/refused";
import { takeUpNowAndThen } from "@/lib/reports/take-up-imports";
import { asWhoAsks } from "@/lib/reports/viewer";
import { loggedPages, type PageName } from "@/lib/views/log/logged-pages";
import { withSentence } from "./refusal";
import { seen } from "./seen";

/**
 * Reads what a page shows; what is refused becomes status 403 with the refusal's sentence (refusal-boundary). Either leaves a line in the
 * log.
 *
 * @param page its folder in app
 * @param about numbers and codes of what it shows, for the log
 */
export async function within<View>(
  page: PageName,
  read: () => View | Promise<View>,
  about: Readonly<Record<string, unknown>> = {},
): Promise<View> {
  // Behind the answer: whoever is read for, an import whose process is gone goes on.
  after(takeUpNowAndThen);
  try {
    const view = await asWhoAsks(read);
    // Nothing found is nothing seen.
    if ("kind" in loggedPages[page] && view !== null && view !== undefined)
      await seen("saw", page, Object.entries(about));
    return view;
  } catch (error) {
    if (!(error instanceof Refused)) throw error;
    await seen("refused", page, []);
    throw withSentence(forbidden, error.message);
  }
}
