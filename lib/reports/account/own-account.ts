import { notesReach } from "@/lib/access/reach";
import type { Due, Viewer } from "@/lib/access/viewer";
import { liveSession } from "@/lib/store/sign-in/live-session";
import { ownSecondFactor } from "@/lib/store/sign-in/own-account";
import { ownSignIns } from "@/lib/store/sign-in/own-sign-ins";
import { moment } from "@/lib/views/day";

/** What one's own account shows. */
export type OwnAccount = {
  readonly due?: Due;
  readonly second: { readonly on: boolean; readonly required: boolean };
  readonly sessions: readonly {
    readonly id: string;
    readonly began: string;
    readonly used: string;
    readonly browser: string;
    /** The one that asks. */
    readonly here: boolean;
  }[];
};

/** One's own account; nobody else's can be asked for. */
export async function ownAccount(viewer: Viewer, from: Headers): Promise<OwnAccount> {
  const reach = notesReach(viewer);
  const [second, sessions, asking] = await Promise.all([
    ownSecondFactor(reach),
    ownSignIns(reach),
    liveSession(from),
  ]);
  return {
    ...{ due: viewer.due, second },
    sessions: sessions.map(({ id, began, used, browser }) => ({
      ...{ id, began: moment(began, "UTC"), used: moment(used, "UTC") },
      browser: browser.slice(0, 100),
      here: id === asking?.session.id,
    })),
  };
}
