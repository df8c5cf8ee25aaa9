import { day } from "./day";
import { count } from "./quantity";
import { visitAddress } from "./visit-address";

export type CanalAskingForLook = {
  readonly practice: string;
  readonly sessionId: string;
  readonly day: string;
  readonly tooth: string;
  readonly canal: string;
  readonly separations: number;
  readonly disagrees: boolean;
  readonly usesHeld: number;
  readonly volumeMissing: boolean;
  readonly timeMissing: boolean;
};

/** One canal whose records are worth a look, and why. */
export type LookLine = {
  readonly id: string;
  readonly href: string;
  readonly day: string;
  readonly unit: string;
  readonly why: string;
};

/** A canal worth a look as a line of a list. */
export function lookLine(canal: CanalAskingForLook): LookLine {
  const why = [
    canal.separations > 0
      ? canal.separations === 1
        ? "an instrument separated"
        : `${count(canal.separations)} instruments separated`
      : "",
    canal.disagrees ? "volume, flow and time do not fit together" : "",
    canal.usesHeld > 0 ? "a row about an instrument is held" : "",
    canal.volumeMissing ? "volume not recorded" : "",
    canal.timeMissing ? "irrigation time not recorded" : "",
  ].filter(Boolean);
  return {
    id: `${canal.practice}/${canal.sessionId}/${canal.canal}`,
    href: visitAddress(canal.practice, canal.sessionId),
    day: day(canal.day),
    unit: `visit ${canal.sessionId}, tooth ${canal.tooth}, canal ${canal.canal}`,
    why: why.join("; "),
  };
}
