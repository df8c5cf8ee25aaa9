-- AlterTable
ALTER TABLE "held" ADD COLUMN     "mend_id" INTEGER;

-- AlterTable
ALTER TABLE "import_files" ADD COLUMN     "mapping" TEXT,
ADD COLUMN     "version" INTEGER;

-- AlterTable
ALTER TABLE "imports" ADD COLUMN     "cancel" BOOLEAN NOT NULL DEFAULT false,
ADD COLUMN     "held_so_far" INTEGER NOT NULL DEFAULT 0,
ADD COLUMN     "rows_expected" INTEGER,
ADD COLUMN     "upload" TEXT;

-- AlterTable
ALTER TABLE "practices" ADD COLUMN     "newer_versions" TEXT NOT NULL DEFAULT 'ask';

-- CreateTable
CREATE TABLE "mappings" (
    "id" SERIAL NOT NULL,
    "name" TEXT NOT NULL,
    "version" INTEGER NOT NULL,
    "definition" JSONB NOT NULL,
    "by" TEXT NOT NULL,
    "at" TIMESTAMPTZ NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "retired" BOOLEAN NOT NULL DEFAULT false,

    CONSTRAINT "mappings_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "waiting_files" (
    "id" SERIAL NOT NULL,
    "name" TEXT NOT NULL,
    "kept" TEXT NOT NULL,
    "bytes" BIGINT NOT NULL,
    "recognised" JSONB,
    "trouble" TEXT,
    "draft" JSONB,
    "zone" TEXT NOT NULL,
    "by" TEXT NOT NULL,
    "at" TIMESTAMPTZ NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "waiting_files_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "mends" (
    "id" SERIAL NOT NULL,
    "table_name" TEXT NOT NULL,
    "changes" JSONB NOT NULL,
    "rows" INTEGER NOT NULL,
    "accepted" INTEGER NOT NULL,
    "still_held" INTEGER NOT NULL,
    "practices" TEXT[],
    "reason" TEXT,
    "mapping" TEXT,
    "by" TEXT NOT NULL,
    "at" TIMESTAMPTZ NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "undone_by" TEXT,
    "undone_at" TIMESTAMPTZ,

    CONSTRAINT "mends_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "mended_rows" (
    "mend_id" INTEGER NOT NULL,
    "held_id" BIGINT NOT NULL,
    "before" JSONB NOT NULL,
    "places" JSONB NOT NULL,

    CONSTRAINT "mended_rows_pkey" PRIMARY KEY ("mend_id","held_id")
);

-- CreateTable
CREATE TABLE "corrections" (
    "id" SERIAL NOT NULL,
    "table_name" TEXT NOT NULL,
    "row_id" BIGINT NOT NULL,
    "held_id" BIGINT NOT NULL,
    "practice" TEXT NOT NULL,
    "session_id" TEXT,
    "day" DATE,
    "key" TEXT NOT NULL,
    "before" JSONB NOT NULL,
    "after" JSONB NOT NULL,
    "rule" TEXT NOT NULL,
    "by" TEXT NOT NULL,
    "at" TIMESTAMPTZ NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "undone_by" TEXT,
    "undone_at" TIMESTAMPTZ,

    CONSTRAINT "corrections_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "taken_files" (
    "sha256" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "import_id" INTEGER NOT NULL,
    "at" TIMESTAMPTZ NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "taken_files_pkey" PRIMARY KEY ("sha256")
);

-- CreateIndex
CREATE UNIQUE INDEX "mappings_name_version_key" ON "mappings"("name", "version");

-- CreateIndex
CREATE INDEX "mended_rows_held_id_idx" ON "mended_rows"("held_id");

-- CreateIndex
CREATE INDEX "corrections_table_name_row_id_idx" ON "corrections"("table_name", "row_id");

-- CreateIndex
CREATE INDEX "corrections_held_id_idx" ON "corrections"("held_id");

-- CreateIndex
CREATE INDEX "sessions_started_at_idx" ON "sessions"("started_at");
