import { holderReach } from "@/lib/access/reach";

/** Everything of a home, for what is run by whoever holds its files: the demo fills an empty home so. */
export function asHolder() {
  return holderReach();
}
