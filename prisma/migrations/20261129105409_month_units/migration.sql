-- CreateTable
CREATE TABLE "month_units" (
    "practice" TEXT NOT NULL,
    "month" DATE NOT NULL,
    "measure" TEXT NOT NULL,
    "content" TEXT NOT NULL,
    "pending" BOOLEAN NOT NULL DEFAULT false,

    CONSTRAINT "month_units_pkey" PRIMARY KEY ("practice","month","measure")
);

-- Read whole and often: kept as it is, without packing.
ALTER TABLE "month_units" ALTER COLUMN "content" SET STORAGE EXTERNAL;

-- The functions that forget do so past row-level security, whoever changes a row: else what they may not see would stay.
-- Whoever makes or forgets kept units does so one after the other: what is made is of one state of the records.
CREATE FUNCTION month_units_lock() RETURNS void LANGUAGE sql AS $$
  SELECT pg_advisory_xact_lock(hashtextextended('canal-audit month units', 0))
$$;

-- Stands as told of lib/store/wall, where policies are forced on the owner too, and answers as what it was before.
CREATE FUNCTION month_units_stand(standing text[]) RETURNS text[] LANGUAGE plpgsql AS $$
DECLARE
  was text[] := ARRAY[current_setting('canal_audit.standing', true), current_setting('canal_audit.records', true)];
BEGIN
  PERFORM set_config('canal_audit.standing', coalesce(standing[1], ''), true), set_config('canal_audit.records', coalesce(standing[2], ''), true);
  RETURN was;
END $$;

-- Facts of visits changed: their months go, and those of every other visit of their patients, as what is done in one visit
-- can count in another of its course. Where the last day of a practice may have moved, so does whatever rests on it.
CREATE FUNCTION month_units_forget_facts() RETURNS trigger LANGUAGE plpgsql
  SECURITY DEFINER SET search_path = public, pg_temp AS $$
DECLARE
  was text[] := month_units_stand(ARRAY['holder', '{*}']);
BEGIN
  PERFORM month_units_lock();
  WITH changed_patients AS (
    SELECT DISTINCT practice, patient FROM changed
  ), stale AS (
    SELECT practice, local_day FROM changed
    UNION
    SELECT f.practice, f.local_day FROM changed_patients p JOIN sessions v ON v.patient = p.patient
    JOIN visit_facts f ON f.visit_id = v.id AND f.practice = p.practice
  )
  DELETE FROM month_units k USING (SELECT DISTINCT practice, date_trunc('month', local_day)::date AS month FROM stale) s
  WHERE k.practice = s.practice AND k.month = s.month;
  DELETE FROM month_units k USING (SELECT practice, max(local_day) AS day FROM changed GROUP BY practice) c
  WHERE k.pending AND k.practice = c.practice
    AND c.day >= coalesce((SELECT max(f.local_day) FROM visit_facts f WHERE f.practice = c.practice), '-infinity');
  PERFORM month_units_stand(was);
  RETURN NULL;
END $$;

CREATE TRIGGER month_units_forget_new AFTER INSERT ON visit_facts
  REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION month_units_forget_facts();
CREATE TRIGGER month_units_forget_old AFTER DELETE ON visit_facts
  REFERENCING OLD TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION month_units_forget_facts();
CREATE TRIGGER month_units_forget_was AFTER UPDATE ON visit_facts
  REFERENCING OLD TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION month_units_forget_facts();
CREATE TRIGGER month_units_forget_is AFTER UPDATE ON visit_facts
  REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION month_units_forget_facts();

-- The care of the equipment changed on some days.
CREATE FUNCTION month_units_forget_upkeep() RETURNS trigger LANGUAGE plpgsql
  SECURITY DEFINER SET search_path = public, pg_temp AS $$
DECLARE
  was text[] := month_units_stand(ARRAY['holder', '{*}']);
BEGIN
  PERFORM month_units_lock();
  DELETE FROM month_units k USING (SELECT DISTINCT practice, date_trunc('month', day)::date AS month FROM changed) s
  WHERE k.practice = s.practice AND k.month = s.month AND k.measure LIKE 'criterion/%';
  PERFORM month_units_stand(was);
  RETURN NULL;
END $$;

CREATE TRIGGER month_units_forget_new AFTER INSERT ON upkeep
  REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION month_units_forget_upkeep();
CREATE TRIGGER month_units_forget_old AFTER DELETE ON upkeep
  REFERENCING OLD TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION month_units_forget_upkeep();
CREATE TRIGGER month_units_forget_was AFTER UPDATE ON upkeep
  REFERENCING OLD TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION month_units_forget_upkeep();
CREATE TRIGGER month_units_forget_is AFTER UPDATE ON upkeep
  REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION month_units_forget_upkeep();

-- The protocol changed from a day on.
CREATE FUNCTION month_units_forget_versions() RETURNS trigger LANGUAGE plpgsql
  SECURITY DEFINER SET search_path = public, pg_temp AS $$
DECLARE
  was text[] := month_units_stand(ARRAY['holder', '{*}']);
BEGIN
  PERFORM month_units_lock();
  DELETE FROM month_units k USING (SELECT practice, min("from") AS since FROM changed GROUP BY practice) s
  WHERE k.practice = s.practice AND k.month >= date_trunc('month', s.since)::date AND k.measure LIKE 'criterion/%';
  PERFORM month_units_stand(was);
  RETURN NULL;
END $$;

CREATE TRIGGER month_units_forget_new AFTER INSERT ON criterion_versions
  REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION month_units_forget_versions();
CREATE TRIGGER month_units_forget_old AFTER DELETE ON criterion_versions
  REFERENCING OLD TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION month_units_forget_versions();
CREATE TRIGGER month_units_forget_was AFTER UPDATE ON criterion_versions
  REFERENCING OLD TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION month_units_forget_versions();
CREATE TRIGGER month_units_forget_is AFTER UPDATE ON criterion_versions
  REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION month_units_forget_versions();

-- Exceptions were entered or withdrawn on a page.
CREATE FUNCTION month_units_forget_exceptions() RETURNS trigger LANGUAGE plpgsql
  SECURITY DEFINER SET search_path = public, pg_temp AS $$
DECLARE
  was text[] := month_units_stand(ARRAY['holder', '{*}']);
BEGIN
  PERFORM month_units_lock();
  DELETE FROM month_units k USING (
    SELECT DISTINCT v.practice, date_trunc('month', v.local_day)::date AS month FROM changed c JOIN sessions v USING (practice, session_id)
  ) s
  WHERE k.practice = s.practice AND k.month = s.month AND k.measure LIKE 'criterion/%';
  PERFORM month_units_stand(was);
  RETURN NULL;
END $$;

CREATE TRIGGER month_units_forget_new AFTER INSERT ON entered_exceptions
  REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION month_units_forget_exceptions();
CREATE TRIGGER month_units_forget_old AFTER DELETE ON entered_exceptions
  REFERENCING OLD TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION month_units_forget_exceptions();
CREATE TRIGGER month_units_forget_is AFTER UPDATE ON entered_exceptions
  REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION month_units_forget_exceptions();

-- Everything goes at once.
CREATE FUNCTION month_units_forget_all() RETURNS trigger LANGUAGE plpgsql
  SECURITY DEFINER SET search_path = public, pg_temp AS $$
DECLARE
  was text[] := month_units_stand(ARRAY['holder', '{*}']);
BEGIN
  PERFORM month_units_lock();
  DELETE FROM month_units;
  PERFORM month_units_stand(was);
  RETURN NULL;
END $$;

CREATE TRIGGER month_units_forget_all AFTER TRUNCATE ON visit_facts
  FOR EACH STATEMENT EXECUTE FUNCTION month_units_forget_all();
CREATE TRIGGER month_units_forget_all AFTER TRUNCATE ON upkeep
  FOR EACH STATEMENT EXECUTE FUNCTION month_units_forget_all();
CREATE TRIGGER month_units_forget_all AFTER TRUNCATE ON criterion_versions
  FOR EACH STATEMENT EXECUTE FUNCTION month_units_forget_all();
CREATE TRIGGER month_units_forget_all AFTER TRUNCATE ON entered_exceptions
  FOR EACH STATEMENT EXECUTE FUNCTION month_units_forget_all();
