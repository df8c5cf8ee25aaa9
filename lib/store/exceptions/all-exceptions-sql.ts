/**
 * SQL: a relation of every exception, imported or entered on a page: visit_id, canal, criterion, reason. What was
 * entered counts where no imported one bears the same key.
 */
export const allExceptions = `(
  select visit_id, canal, criterion, reason from exceptions
  union all
  select s.id, e.canal, e.criterion, e.reason from entered_exceptions e
  join sessions s on s.practice = e.practice and s.session_id = e.session_id
  where e.withdrawn_at is null and not exists (
    select from exceptions x where x.visit_id = s.id and x.canal = e.canal and x.criterion = e.criterion
  ))`;
