import type { Call } from "./action-table";
import { everybody } from "./everybody";

/** What everybody does with their own account: only nobody is kept from it. */
export function ownActions(): Call[] {
  const form = { current: "-", next: "-", code: "-", session: "-" };
  return [
    ...["changePasswordAct", "endSessionAct", "endEverySessionAct", "beginSecondFactorAct"],
    ...["confirmSecondFactorAct", "endSecondFactorAct", "renewRecoveryCodesAct"],
  ].map((name) => ({
    ...{ action: `app/account/acts.ts ${name}`, address: "/account", form, role: everybody },
  }));
}
