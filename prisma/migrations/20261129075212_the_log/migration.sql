-- CreateTable
CREATE TABLE "log_lines" (
    "id" BIGINT NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "kind" TEXT NOT NULL,
    "person" TEXT NOT NULL,
    "what" TEXT NOT NULL,
    "about" TEXT NOT NULL,
    "prev" TEXT NOT NULL,
    "hash" TEXT NOT NULL,

    CONSTRAINT "log_lines_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "log_lines_person_at_idx" ON "log_lines"("person", "at");

-- CreateIndex
CREATE INDEX "log_lines_at_idx" ON "log_lines"("at");

-- Number, moment and hashes of a line are made here, under a lock, whatever is asked: lines stand in one order and none is backdated.
-- What is hashed is what lib/records/log-line writes: the hash before, a line feed, and the line as a JSON array.
CREATE FUNCTION log_lines_chain() RETURNS trigger LANGUAGE plpgsql SET search_path = pg_catalog AS $$
DECLARE
  last_id bigint;
  last_hash text;
BEGIN
  PERFORM pg_advisory_xact_lock(20261105);
  EXECUTE format('SELECT id, hash FROM %s ORDER BY id DESC LIMIT 1', TG_RELID::regclass) INTO last_id, last_hash;
  NEW.id := coalesce(last_id, 0) + 1;
  NEW.at := date_trunc('milliseconds', clock_timestamp());
  NEW.prev := coalesce(last_hash, repeat('0', 64));
  NEW.hash := encode(sha256(convert_to(NEW.prev || E'\n' || jsonb_build_array(
    NEW.id, to_char(NEW.at AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.MS"Z"'),
    NEW.kind, NEW.person, NEW.what, NEW.about)::text, 'UTF8')), 'hex');
  RETURN NEW;
END $$;
CREATE TRIGGER log_lines_chain BEFORE INSERT ON "log_lines" FOR EACH ROW EXECUTE FUNCTION log_lines_chain();

-- A line is never changed and never goes, but where the log's owner cuts it (lib/store/log/cut-lines).
CREATE FUNCTION log_lines_stay() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  RAISE EXCEPTION 'a line of the log is never changed and never deleted';
END $$;
CREATE TRIGGER log_lines_stay BEFORE UPDATE OR DELETE ON "log_lines" FOR EACH ROW EXECUTE FUNCTION log_lines_stay();
CREATE TRIGGER log_lines_stay_whole BEFORE TRUNCATE ON "log_lines" FOR EACH STATEMENT EXECUTE FUNCTION log_lines_stay();

-- What was understood of a waiting file holds cells of it, patients' references among them: from now on it lies beside the file in the home.
UPDATE "waiting_files" SET "recognised" = NULL;
