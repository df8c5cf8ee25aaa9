import type { Canal, Visit } from "../visit";

/** Teeth of the second digit pair's quadrants 5 to 8 are primary (ISO 3950). */
export function primaryTooth({ session }: Visit): readonly [string, boolean] {
  return ["primary-tooth", Number(String(session.tooth).charAt(0)) >= 5];
}

/** An apex that nobody wrote down as open is taken as closed. */
export function openApex({ row }: Canal): readonly [string, boolean] {
  return ["open-apex", row.apex === "open"];
}
