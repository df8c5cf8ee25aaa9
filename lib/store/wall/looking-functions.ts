import { practicesOf, setting } from "./policy-words";
import { everyPractice } from "./told-sql";

/** SQL of a function that policies ask, and its name with the types of what it takes. */
type Looking = { readonly name: string; readonly create: string };

const worked = (column: string, facts: string) =>
  `select ${column} from public.${facts} where worker = ${setting("worker")}`;

/**
 * Functions that look at the records with the owner's eyes, as a policy on the records cannot look at them through itself. Each answers
 * for the viewer alone.
 *
 * @param forced are the policies forced on the owner too, who then has to read all records while it looks; such a function stops PostgreSQL
 *   from working side by side
 */
export function lookingFunctions(forced: boolean): readonly Looking[] {
  return [
    looking("visits_of_viewer()", "bigint", "setof", worked("visit_id", "visit_facts")),
    // Asked where the visit is not theirs, which is seldom: a dentist's canals are three times as many as their visits.
    looking("visits_of_canals_of_viewer()", "bigint", "setof", worked("visit_id", "canal_facts")),
    looking(
      "practices_of_viewer()",
      "text",
      "setof",
      `${worked("practice", "visit_facts")} union ${worked("practice", "canal_facts")}`,
    ),
    looking(
      "visit_is_elsewhere(text)",
      "boolean",
      "",
      `select exists (select from public.sessions where session_id = $1 and not practice = any(${practicesOf(["record-keeper"])}))`,
    ),
  ];

  function looking(name: string, type: string, set: "setof" | "", sql: string): Looking {
    const head = `create or replace function public.${name} returns ${set} ${type} stable security definer set search_path = pg_catalog`;
    const stand = (as: string) => `perform set_config('canal_audit.records', ${as}, true)`;
    const answer = set ? `return query ${sql}` : `answer := (${sql})`;
    return {
      name,
      create: forced
        ? `${head} language plpgsql as $$ declare was text := coalesce(${setting("records")}, ''); answer ${type};
           begin ${stand(`'{${everyPractice}}'`)}; ${answer}; ${stand("was")}; return ${set ? "" : "answer"}; end $$`
        : `${head} parallel safe language sql as $$ ${sql} $$`,
    };
  }
}
