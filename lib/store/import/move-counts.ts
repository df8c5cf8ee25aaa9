import type pg from "pg";

/**
 * Moves places between what their files count them as, so that the counts keep adding up to the rows read. Which of an accepted row's
 * places was new is not always known once others are gone: no count falls below nothing.
 *
 * @param places SQL giving file_id, `was` and `becomes`, one row a place: accepted, repeated, held or let-go
 */
export async function moveCounts(client: pg.ClientBase, places: string): Promise<void> {
  const states = ["accepted", "repeated", "held", "let-go"] as const;
  const sums = states.flatMap((state) => [
    `count(*) filter (where was = '${state}')::int as "was ${state}"`,
    `count(*) filter (where becomes = '${state}')::int as "becomes ${state}"`,
  ]);
  await client.query(`
    with moved as (select file_id, ${sums.join(", ")} from (${places}) p group by file_id),
    taken as (
      select m.*, greatest(least("was accepted", f.accepted), "was accepted" + "was repeated" - f.repeated) as accepted
      from moved m join import_files f on f.id = m.file_id
    )
    update import_files f set
      accepted = f.accepted - t.accepted + "becomes accepted",
      repeated = f.repeated - ("was accepted" + "was repeated" - t.accepted) + "becomes repeated",
      held = f.held - "was held" + "becomes held", let_go = f.let_go - "was let-go" + "becomes let-go"
    from taken t where t.file_id = f.id`);
}
