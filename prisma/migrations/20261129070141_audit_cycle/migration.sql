-- CreateTable
CREATE TABLE "audits" (
    "id" SERIAL NOT NULL,
    "practice" TEXT,
    "period" TEXT NOT NULL,
    "criteria" TEXT[],
    "previous_id" INTEGER,
    "by" TEXT NOT NULL,
    "at" TIMESTAMPTZ NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "confirm_until" DATE,
    "confirm_closed_by" TEXT,
    "confirm_closed_at" TIMESTAMPTZ,
    "restate_reason" TEXT,
    "restate_by" TEXT,
    "set_aside_by" TEXT,
    "set_aside_at" TIMESTAMPTZ,

    CONSTRAINT "audits_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "audit_texts" (
    "audit_id" INTEGER NOT NULL,
    "key" TEXT NOT NULL,
    "revision" INTEGER NOT NULL,
    "text" TEXT NOT NULL,
    "by" TEXT NOT NULL,
    "at" TIMESTAMPTZ NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "audit_texts_pkey" PRIMARY KEY ("audit_id","key","revision")
);

-- CreateTable
CREATE TABLE "audit_looks" (
    "audit_id" INTEGER NOT NULL,
    "flag" TEXT NOT NULL,
    "step" TEXT NOT NULL,
    "by" TEXT NOT NULL,
    "at" TIMESTAMPTZ NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "audit_looks_pkey" PRIMARY KEY ("audit_id","flag")
);

-- CreateTable
CREATE TABLE "audit_confirmations" (
    "audit_id" INTEGER NOT NULL,
    "clinician_key" TEXT NOT NULL,
    "by" TEXT NOT NULL,
    "at" TIMESTAMPTZ NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "audit_confirmations_pkey" PRIMARY KEY ("audit_id","clinician_key")
);

-- CreateTable
CREATE TABLE "audit_disputes" (
    "id" SERIAL NOT NULL,
    "audit_id" INTEGER NOT NULL,
    "clinician_key" TEXT NOT NULL,
    "practice" TEXT NOT NULL,
    "session_id" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "note" TEXT NOT NULL,
    "by" TEXT NOT NULL,
    "at" TIMESTAMPTZ NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "answer" TEXT,
    "answered_by" TEXT,
    "answered_at" TIMESTAMPTZ,
    "withdrawn_at" TIMESTAMPTZ,

    CONSTRAINT "audit_disputes_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "audit_actions" (
    "id" SERIAL NOT NULL,
    "audit_id" INTEGER NOT NULL,
    "measure" TEXT,
    "what" TEXT NOT NULL,
    "why" TEXT NOT NULL,
    "owner" TEXT NOT NULL,
    "owner_id" TEXT,
    "due" DATE NOT NULL,
    "know" TEXT NOT NULL,
    "by" TEXT NOT NULL,
    "at" TIMESTAMPTZ NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "audit_actions_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "audit_action_news" (
    "id" SERIAL NOT NULL,
    "action_id" INTEGER NOT NULL,
    "state" TEXT NOT NULL,
    "text" TEXT NOT NULL,
    "by" TEXT NOT NULL,
    "at" TIMESTAMPTZ NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "audit_action_news_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "signed_audits" (
    "audit_id" INTEGER NOT NULL,
    "version" INTEGER NOT NULL,
    "reason" TEXT,
    "content" TEXT NOT NULL,
    "sha256" TEXT NOT NULL,
    "computed_sha256" TEXT NOT NULL,
    "by" TEXT NOT NULL,
    "at" TIMESTAMPTZ NOT NULL,

    CONSTRAINT "signed_audits_pkey" PRIMARY KEY ("audit_id","version")
);

-- CreateTable
CREATE TABLE "audit_readers" (
    "audit_id" INTEGER NOT NULL,
    "user_id" TEXT NOT NULL,
    "clinician_key" TEXT NOT NULL,
    "first_at" TIMESTAMPTZ NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "last_at" TIMESTAMPTZ NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "audit_readers_pkey" PRIMARY KEY ("audit_id","user_id")
);

-- CreateTable
CREATE TABLE "audit_answers" (
    "audit_id" INTEGER NOT NULL,
    "user_id" TEXT NOT NULL,
    "clinician_key" TEXT NOT NULL,
    "text" TEXT NOT NULL,
    "by" TEXT NOT NULL,
    "at" TIMESTAMPTZ NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "audit_answers_pkey" PRIMARY KEY ("audit_id","user_id")
);

-- CreateTable
CREATE TABLE "reflections" (
    "audit_id" INTEGER NOT NULL,
    "user_id" TEXT NOT NULL,
    "text" TEXT NOT NULL,
    "saved_at" TIMESTAMPTZ NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "reflections_pkey" PRIMARY KEY ("audit_id","user_id")
);

-- CreateTable
CREATE TABLE "schedules" (
    "id" SERIAL NOT NULL,
    "what" TEXT NOT NULL,
    "practice" TEXT,
    "format" TEXT,
    "criteria" TEXT[],
    "user_id" TEXT NOT NULL,
    "by" TEXT NOT NULL,
    "at" TIMESTAMPTZ NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "stopped_by" TEXT,
    "stopped_at" TIMESTAMPTZ,

    CONSTRAINT "schedules_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "prepared" (
    "schedule_id" INTEGER NOT NULL,
    "period" TEXT NOT NULL,
    "audit_id" INTEGER,
    "file" BYTEA,
    "name" TEXT,
    "sha256" TEXT,
    "at" TIMESTAMPTZ NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "prepared_pkey" PRIMARY KEY ("schedule_id","period")
);

-- CreateIndex
CREATE INDEX "audit_disputes_audit_id_idx" ON "audit_disputes"("audit_id");

-- CreateIndex
CREATE INDEX "audit_actions_audit_id_idx" ON "audit_actions"("audit_id");

-- CreateIndex
CREATE INDEX "audit_action_news_action_id_idx" ON "audit_action_news"("action_id");

-- AddForeignKey
ALTER TABLE "audits" ADD CONSTRAINT "audits_practice_fkey" FOREIGN KEY ("practice") REFERENCES "practices"("code") ON DELETE SET NULL ON UPDATE CASCADE;

-- A signed version is never changed and never goes, whoever asks.
CREATE FUNCTION signed_audits_stay() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  RAISE EXCEPTION 'a signed audit is kept as it was signed';
END $$;
CREATE TRIGGER signed_audits_stay BEFORE UPDATE OR DELETE ON "signed_audits" FOR EACH ROW EXECUTE FUNCTION signed_audits_stay();
CREATE TRIGGER signed_audits_stay_whole BEFORE TRUNCATE ON "signed_audits" FOR EACH STATEMENT EXECUTE FUNCTION signed_audits_stay();
