-- AlterTable
ALTER TABLE "canal_facts" ADD COLUMN     "deliveries_held" INTEGER NOT NULL DEFAULT 0;

-- AlterTable
ALTER TABLE "visit_facts" ADD COLUMN     "deliveries_held" INTEGER NOT NULL DEFAULT 0,
ADD COLUMN     "held_rows" INTEGER NOT NULL DEFAULT 0,
ADD COLUMN     "powered" BOOLEAN NOT NULL DEFAULT false;

-- CreateTable
CREATE TABLE "criterion_versions" (
    "id" SERIAL NOT NULL,
    "practice" TEXT NOT NULL,
    "criterion" TEXT NOT NULL,
    "definition" JSONB NOT NULL,
    "in_force" BOOLEAN NOT NULL,
    "from" DATE NOT NULL,
    "written_on" DATE NOT NULL,
    "reason" TEXT NOT NULL,
    "by" TEXT NOT NULL,
    "at" TIMESTAMPTZ NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "withdrawn_by" TEXT,
    "withdrawn_at" TIMESTAMPTZ,

    CONSTRAINT "criterion_versions_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "own_terms" (
    "practice" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "code" TEXT NOT NULL,
    "words" TEXT NOT NULL,
    "by" TEXT NOT NULL,
    "at" TIMESTAMPTZ NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "retired" BOOLEAN NOT NULL DEFAULT false,

    CONSTRAINT "own_terms_pkey" PRIMARY KEY ("practice","kind","code")
);

-- CreateTable
CREATE TABLE "entered_exceptions" (
    "id" SERIAL NOT NULL,
    "practice" TEXT NOT NULL,
    "session_id" TEXT NOT NULL,
    "canal" TEXT NOT NULL,
    "criterion" TEXT NOT NULL,
    "reason" TEXT NOT NULL,
    "note" TEXT,
    "user_id" TEXT NOT NULL,
    "by" TEXT NOT NULL,
    "at" TIMESTAMPTZ NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "withdrawn_by" TEXT,
    "withdrawn_at" TIMESTAMPTZ,

    CONSTRAINT "entered_exceptions_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "exception_queries" (
    "id" SERIAL NOT NULL,
    "practice" TEXT NOT NULL,
    "session_id" TEXT NOT NULL,
    "canal" TEXT NOT NULL,
    "criterion" TEXT NOT NULL,
    "question" TEXT NOT NULL,
    "by" TEXT NOT NULL,
    "at" TIMESTAMPTZ NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "answer" TEXT,
    "answered_by" TEXT,
    "answered_at" TIMESTAMPTZ,
    "closed_by" TEXT,
    "closed_at" TIMESTAMPTZ,

    CONSTRAINT "exception_queries_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "criterion_versions_practice_criterion_idx" ON "criterion_versions"("practice", "criterion");

-- CreateIndex
CREATE INDEX "entered_exceptions_practice_session_id_idx" ON "entered_exceptions"("practice", "session_id");

-- CreateIndex
CREATE INDEX "exception_queries_practice_session_id_idx" ON "exception_queries"("practice", "session_id");

-- CreateIndex
CREATE INDEX "sessions_patient_tooth_idx" ON "sessions"("patient", "tooth");

-- AddForeignKey
ALTER TABLE "criterion_versions" ADD CONSTRAINT "criterion_versions_practice_fkey" FOREIGN KEY ("practice") REFERENCES "practices"("code") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "own_terms" ADD CONSTRAINT "own_terms_practice_fkey" FOREIGN KEY ("practice") REFERENCES "practices"("code") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "entered_exceptions" ADD CONSTRAINT "entered_exceptions_practice_fkey" FOREIGN KEY ("practice") REFERENCES "practices"("code") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "exception_queries" ADD CONSTRAINT "exception_queries_practice_fkey" FOREIGN KEY ("practice") REFERENCES "practices"("code") ON DELETE RESTRICT ON UPDATE CASCADE;

-- The facts there are take what is new in them from the records they were derived from.
UPDATE "canal_facts" f SET "deliveries_held" = h.rows
FROM (SELECT v."id" AS visit_id, h."canal", count(*)::int AS rows FROM "held" h
  JOIN "sessions" v ON v."session_id" = h."session_id" AND (h."practice" IS NULL OR h."practice" = v."practice")
  WHERE h."table_name" = 'irrigation' AND h."state" = 'held' GROUP BY v."id", h."canal") h
WHERE h.visit_id = f."visit_id" AND h."canal" = f."canal";
UPDATE "visit_facts" f SET "held_rows" = h.rows, "deliveries_held" = h.deliveries
FROM (SELECT v."id" AS visit_id, count(*)::int AS rows, count(*) FILTER (WHERE h."table_name" = 'irrigation')::int AS deliveries
  FROM "held" h JOIN "sessions" v ON v."session_id" = h."session_id" AND (h."practice" IS NULL OR h."practice" = v."practice")
  WHERE h."state" = 'held' GROUP BY v."id") h
WHERE h.visit_id = f."visit_id";
UPDATE "visit_facts" f SET "powered" = true
WHERE EXISTS (SELECT FROM "canals" c WHERE c."visit_id" = f."visit_id" AND c."preparation" IN ('oscillating', 'rotary', 'reciprocating'))
   OR EXISTS (SELECT FROM "instruments" i WHERE i."visit_id" = f."visit_id" AND i."kind" IN ('oscillating', 'rotary', 'reciprocating'));
