import { createHash } from "node:crypto";
import pg from "pg";
import { lookingFunctions } from "./looking-functions";
import { openTables } from "./open-tables";
import { type Wall, walledTables } from "./walled-tables";

/** The wall as SQL to be run in one transaction by whoever may alter the tables of `owner`. */
export type WallSql = { readonly sql: string; readonly digest: string };

/**
 * @param owner the role that owns the tables
 * @param viewers the role as which requests are asked; null where the owner is the only one, who is then held by the policies too, as long
 *   as it does not take them off
 */
export function wallSql(owner: string, viewers: string | null): WallSql {
  const role = viewers === null ? null : pg.escapeIdentifier(viewers);
  const lines = [
    ...lookingFunctions(role === null).flatMap(({ name, create }) => [
      create,
      `alter function public.${name} owner to ${pg.escapeIdentifier(owner)}`,
      `revoke all on function public.${name} from public`,
      `grant execute on function public.${name} to ${[pg.escapeIdentifier(owner), ...(role ? [role] : [])].join(", ")}`,
    ]),
    ...Object.entries(walledTables).flatMap(([table, wall]) => walled(table, wall, role)),
    ...(role ? granted(role) : []),
  ];
  const sql = lines.join(";\n");
  const digest = createHash("sha256").update(sql).digest("hex");
  return { sql: `${sql};\ncomment on policy reads on public.sessions is '${digest}'`, digest };
}

function walled(table: string, { reads, writes }: Wall, role: string | null): string[] {
  const on = `on public.${pg.escapeIdentifier(table)}`;
  const alter = `alter table public.${pg.escapeIdentifier(table)}`;
  return [
    ...["reads", "adds", "changes", "removes"].map((one) => `drop policy if exists ${one} ${on}`),
    `create policy reads ${on} for select using (${reads})`,
    `create policy adds ${on} for insert with check (${writes})`,
    // What is seen may be locked; what it becomes must be theirs.
    `create policy changes ${on} for update using (${reads}) with check (${writes})`,
    `create policy removes ${on} for delete using (${writes})`,
    `${alter} enable row level security`,
    `${alter} ${role ? "no " : ""}force row level security`,
    ...(role ? [`grant select, insert, update, delete ${on} to ${role}`] : []),
  ];
}

/** What else the viewers' role may do; nothing that alters a table or empties it whole. */
function granted(role: string): string[] {
  return [
    `grant usage on schema public to ${role}`,
    `grant usage on all sequences in schema public to ${role}`,
    ...Object.entries(openTables)
      .filter(([, { may }]) => may !== "")
      .map(([table, { may }]) => `grant ${may} on public.${pg.escapeIdentifier(table)} to ${role}`),
  ];
}
