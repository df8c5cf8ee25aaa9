-- AlterTable
ALTER TABLE "canal_facts" ADD COLUMN     "curvature_deg" DOUBLE PRECISION;

-- CreateTable
CREATE TABLE "flag_levels" (
    "id" SERIAL NOT NULL,
    "look" DOUBLE PRECISION NOT NULL,
    "look_first" DOUBLE PRECISION NOT NULL,
    "reason" TEXT NOT NULL,
    "by" TEXT NOT NULL,
    "at" TIMESTAMPTZ NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "flag_levels_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "rebases" (
    "id" SERIAL NOT NULL,
    "measure" TEXT NOT NULL,
    "subject" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "month" TEXT NOT NULL,
    "reason" TEXT NOT NULL,
    "by" TEXT NOT NULL,
    "at" TIMESTAMPTZ NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "withdrawn_by" TEXT,
    "withdrawn_at" TIMESTAMPTZ,

    CONSTRAINT "rebases_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "rebases_measure_kind_subject_idx" ON "rebases"("measure", "kind", "subject");

-- The facts there are take their curvature from the canals they were derived from.
UPDATE "canal_facts" f SET "curvature_deg" = c."curvature_deg"
FROM "canals" c WHERE c."visit_id" = f."visit_id" AND c."canal" = f."canal";
