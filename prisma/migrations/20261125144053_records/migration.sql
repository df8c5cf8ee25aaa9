-- CreateTable
CREATE TABLE "practices" (
    "code" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "zone" TEXT NOT NULL,
    "confirmed" BOOLEAN NOT NULL DEFAULT false,

    CONSTRAINT "practices_pkey" PRIMARY KEY ("code")
);

-- CreateTable
CREATE TABLE "chairs" (
    "practice" TEXT NOT NULL,
    "code" TEXT NOT NULL,
    "confirmed" BOOLEAN NOT NULL DEFAULT false,

    CONSTRAINT "chairs_pkey" PRIMARY KEY ("practice","code")
);

-- CreateTable
CREATE TABLE "clinicians" (
    "practice" TEXT NOT NULL,
    "code" TEXT NOT NULL,
    "confirmed" BOOLEAN NOT NULL DEFAULT false,

    CONSTRAINT "clinicians_pkey" PRIMARY KEY ("practice","code")
);

-- CreateTable
CREATE TABLE "users" (
    "id" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "email" TEXT NOT NULL,
    "email_verified" BOOLEAN NOT NULL DEFAULT false,
    "image" TEXT,
    "created_at" TIMESTAMPTZ NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ NOT NULL,

    CONSTRAINT "users_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "sign_ins" (
    "id" TEXT NOT NULL,
    "token" TEXT NOT NULL,
    "user_id" TEXT NOT NULL,
    "expires_at" TIMESTAMPTZ NOT NULL,
    "ip_address" TEXT,
    "user_agent" TEXT,
    "created_at" TIMESTAMPTZ NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ NOT NULL,

    CONSTRAINT "sign_ins_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "accounts" (
    "id" TEXT NOT NULL,
    "account_id" TEXT NOT NULL,
    "provider_id" TEXT NOT NULL,
    "user_id" TEXT NOT NULL,
    "access_token" TEXT,
    "refresh_token" TEXT,
    "id_token" TEXT,
    "access_token_expires_at" TIMESTAMPTZ,
    "refresh_token_expires_at" TIMESTAMPTZ,
    "scope" TEXT,
    "password" TEXT,
    "created_at" TIMESTAMPTZ NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ NOT NULL,

    CONSTRAINT "accounts_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "verifications" (
    "id" TEXT NOT NULL,
    "identifier" TEXT NOT NULL,
    "value" TEXT NOT NULL,
    "expires_at" TIMESTAMPTZ NOT NULL,
    "created_at" TIMESTAMPTZ NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ NOT NULL,

    CONSTRAINT "verifications_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "rate_limits" (
    "id" TEXT NOT NULL,
    "key" TEXT NOT NULL,
    "count" INTEGER NOT NULL,
    "last_request" BIGINT NOT NULL,

    CONSTRAINT "rate_limits_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "grants" (
    "id" SERIAL NOT NULL,
    "user_id" TEXT NOT NULL,
    "role" TEXT NOT NULL,
    "practice" TEXT,
    "clinician_key" TEXT,

    CONSTRAINT "grants_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "notes" (
    "user_id" TEXT NOT NULL,
    "period" TEXT NOT NULL,
    "text" TEXT NOT NULL,
    "saved_at" TIMESTAMPTZ NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "notes_pkey" PRIMARY KEY ("user_id","period")
);

-- CreateTable
CREATE TABLE "settings" (
    "key" TEXT NOT NULL,
    "value" TEXT NOT NULL,

    CONSTRAINT "settings_pkey" PRIMARY KEY ("key")
);

-- CreateTable
CREATE TABLE "exports" (
    "id" SERIAL NOT NULL,
    "what" TEXT NOT NULL,
    "period" TEXT NOT NULL,
    "scope" TEXT NOT NULL,
    "by" TEXT NOT NULL,
    "at" TIMESTAMPTZ NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "sha256" TEXT NOT NULL,

    CONSTRAINT "exports_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "imports" (
    "id" SERIAL NOT NULL,
    "by" TEXT NOT NULL,
    "state" TEXT NOT NULL,
    "message" TEXT,
    "started_at" TIMESTAMPTZ NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "finished_at" TIMESTAMPTZ,
    "rows_read" INTEGER NOT NULL DEFAULT 0,
    "practices" TEXT[],

    CONSTRAINT "imports_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "import_files" (
    "id" SERIAL NOT NULL,
    "import_id" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "table_name" TEXT NOT NULL,
    "ignored" TEXT[],
    "read" INTEGER NOT NULL DEFAULT 0,
    "accepted" INTEGER NOT NULL DEFAULT 0,
    "repeated" INTEGER NOT NULL DEFAULT 0,
    "held" INTEGER NOT NULL DEFAULT 0,
    "let_go" INTEGER NOT NULL DEFAULT 0,

    CONSTRAINT "import_files_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "witnesses" (
    "table_name" TEXT NOT NULL,
    "row_id" BIGINT NOT NULL,
    "file_id" INTEGER NOT NULL,
    "line" INTEGER NOT NULL,
    "fields" INTEGER NOT NULL,

    CONSTRAINT "witnesses_pkey" PRIMARY KEY ("table_name","row_id","file_id","line")
);

-- CreateTable
CREATE TABLE "held" (
    "id" BIGSERIAL NOT NULL,
    "table_name" TEXT NOT NULL,
    "digest" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "practice" TEXT,
    "session_id" TEXT,
    "canal" TEXT,
    "key" TEXT NOT NULL,
    "raw" JSONB NOT NULL,
    "values" JSONB,
    "reasons" JSONB NOT NULL,
    "file_id" INTEGER NOT NULL,
    "line" INTEGER NOT NULL,
    "state" TEXT NOT NULL DEFAULT 'held',
    "settled_by" TEXT,
    "settled_at" TIMESTAMPTZ,
    "settled_reason" TEXT,

    CONSTRAINT "held_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "sessions" (
    "id" BIGSERIAL NOT NULL,
    "file_id" INTEGER NOT NULL,
    "line" INTEGER NOT NULL,
    "fields" INTEGER NOT NULL,
    "practice" TEXT NOT NULL,
    "session_id" TEXT NOT NULL,
    "chair" TEXT NOT NULL,
    "clinician" TEXT NOT NULL,
    "supervisor" TEXT,
    "patient" TEXT NOT NULL,
    "case_id" TEXT,
    "started_at" TIMESTAMPTZ NOT NULL,
    "ended_at" TIMESTAMPTZ,
    "local_day" DATE NOT NULL,
    "tooth" TEXT NOT NULL,
    "tooth_notation" TEXT NOT NULL,
    "treatment" TEXT NOT NULL,
    "pulp" TEXT,
    "difficulty" TEXT,
    "outcome" TEXT NOT NULL,

    CONSTRAINT "sessions_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "canals" (
    "id" BIGSERIAL NOT NULL,
    "file_id" INTEGER NOT NULL,
    "line" INTEGER NOT NULL,
    "fields" INTEGER NOT NULL,
    "visit_id" BIGINT NOT NULL,
    "canal" TEXT NOT NULL,
    "clinician" TEXT,
    "working_length_mm" DOUBLE PRECISION,
    "length_method" TEXT,
    "curvature_deg" DOUBLE PRECISION,
    "apex" TEXT,
    "preparation" TEXT NOT NULL,
    "device" TEXT,
    "apical_size" INTEGER,
    "taper_pct" DOUBLE PRECISION,
    "preparation_s" DOUBLE PRECISION,
    "timer_reset" TEXT,
    "filled" BOOLEAN,
    "fragment_on_arrival" BOOLEAN,

    CONSTRAINT "canals_pkey" PRIMARY KEY ("visit_id","canal")
);

-- CreateTable
CREATE TABLE "irrigation" (
    "id" BIGSERIAL NOT NULL,
    "file_id" INTEGER NOT NULL,
    "line" INTEGER NOT NULL,
    "fields" INTEGER NOT NULL,
    "visit_id" BIGINT NOT NULL,
    "canal" TEXT NOT NULL,
    "seq" INTEGER NOT NULL,
    "started_at" TIMESTAMPTZ,
    "irrigant" TEXT NOT NULL,
    "concentration_pct" DOUBLE PRECISION,
    "volume_ml" DOUBLE PRECISION,
    "flow_ml_min" DOUBLE PRECISION,
    "duration_s" DOUBLE PRECISION,
    "dwell_s" DOUBLE PRECISION,
    "basis" TEXT,
    "delivery" TEXT NOT NULL,
    "activation" TEXT,
    "activation_s" DOUBLE PRECISION,
    "tip_short_mm" DOUBLE PRECISION,

    CONSTRAINT "irrigation_pkey" PRIMARY KEY ("visit_id","canal","seq")
);

-- CreateTable
CREATE TABLE "instruments" (
    "id" BIGSERIAL NOT NULL,
    "file_id" INTEGER NOT NULL,
    "line" INTEGER NOT NULL,
    "fields" INTEGER NOT NULL,
    "visit_id" BIGINT NOT NULL,
    "canal" TEXT NOT NULL,
    "seq" INTEGER NOT NULL,
    "kind" TEXT NOT NULL,
    "instrument_id" TEXT,
    "uses" INTEGER,
    "size" INTEGER,
    "taper_pct" DOUBLE PRECISION,
    "lot" TEXT,
    "steriliser_cycle" TEXT,
    "single_use" BOOLEAN,
    "use_number" INTEGER,
    "speed_per_min" DOUBLE PRECISION,
    "torque_n_cm" DOUBLE PRECISION,
    "separated" INTEGER,
    "third" TEXT,
    "fragment_mm" DOUBLE PRECISION,
    "management" TEXT,
    "patient_told" BOOLEAN,

    CONSTRAINT "instruments_pkey" PRIMARY KEY ("visit_id","canal","seq")
);

-- CreateTable
CREATE TABLE "followups" (
    "id" BIGSERIAL NOT NULL,
    "file_id" INTEGER NOT NULL,
    "line" INTEGER NOT NULL,
    "fields" INTEGER NOT NULL,
    "visit_id" BIGINT NOT NULL,
    "canal" TEXT NOT NULL,
    "seq" INTEGER NOT NULL,
    "day" DATE NOT NULL,
    "management" TEXT,
    "patient_told" BOOLEAN,

    CONSTRAINT "followups_pkey" PRIMARY KEY ("visit_id","canal","seq","day")
);

-- CreateTable
CREATE TABLE "steps" (
    "id" BIGSERIAL NOT NULL,
    "file_id" INTEGER NOT NULL,
    "line" INTEGER NOT NULL,
    "fields" INTEGER NOT NULL,
    "visit_id" BIGINT NOT NULL,
    "canal" TEXT NOT NULL,
    "step" TEXT NOT NULL,
    "status" TEXT NOT NULL,
    "reason" TEXT,
    "at" TIMESTAMPTZ,

    CONSTRAINT "steps_pkey" PRIMARY KEY ("visit_id","canal","step")
);

-- CreateTable
CREATE TABLE "exceptions" (
    "id" BIGSERIAL NOT NULL,
    "file_id" INTEGER NOT NULL,
    "line" INTEGER NOT NULL,
    "fields" INTEGER NOT NULL,
    "visit_id" BIGINT NOT NULL,
    "canal" TEXT NOT NULL,
    "criterion" TEXT NOT NULL,
    "reason" TEXT NOT NULL,
    "entered_by" TEXT,
    "entered_at" TIMESTAMPTZ,

    CONSTRAINT "exceptions_pkey" PRIMARY KEY ("visit_id","canal","criterion")
);

-- CreateTable
CREATE TABLE "incidents" (
    "id" BIGSERIAL NOT NULL,
    "file_id" INTEGER NOT NULL,
    "line" INTEGER NOT NULL,
    "fields" INTEGER NOT NULL,
    "visit_id" BIGINT NOT NULL,
    "kind" TEXT NOT NULL,
    "found_at" TIMESTAMPTZ,
    "patient_told" BOOLEAN,
    "reported" BOOLEAN,

    CONSTRAINT "incidents_pkey" PRIMARY KEY ("visit_id","kind")
);

-- CreateTable
CREATE TABLE "upkeep" (
    "id" BIGSERIAL NOT NULL,
    "file_id" INTEGER NOT NULL,
    "line" INTEGER NOT NULL,
    "fields" INTEGER NOT NULL,
    "practice" TEXT NOT NULL,
    "chair" TEXT NOT NULL,
    "device" TEXT NOT NULL,
    "day" DATE NOT NULL,
    "task" TEXT NOT NULL,
    "status" TEXT NOT NULL,
    "duration_s" DOUBLE PRECISION,
    "at" TIMESTAMPTZ,
    "done_by" TEXT,

    CONSTRAINT "upkeep_pkey" PRIMARY KEY ("practice","chair","device","day","task")
);

-- CreateTable
CREATE TABLE "people" (
    "id" BIGSERIAL NOT NULL,
    "file_id" INTEGER NOT NULL,
    "line" INTEGER NOT NULL,
    "fields" INTEGER NOT NULL,
    "person" TEXT NOT NULL,
    "practice" TEXT NOT NULL,
    "code" TEXT NOT NULL,
    "from" DATE NOT NULL,
    "to" DATE,
    "peers" TEXT,

    CONSTRAINT "people_pkey" PRIMARY KEY ("person","practice","code","from")
);

-- CreateTable
CREATE TABLE "canal_facts" (
    "visit_id" BIGINT NOT NULL,
    "canal" TEXT NOT NULL,
    "practice" TEXT NOT NULL,
    "chair" TEXT NOT NULL,
    "clinician" TEXT NOT NULL,
    "worker" TEXT NOT NULL,
    "patient" TEXT NOT NULL,
    "local_day" DATE NOT NULL,
    "tooth" TEXT NOT NULL,
    "treatment" TEXT NOT NULL,
    "exclusion" TEXT,
    "preparation" TEXT NOT NULL,
    "delivery" TEXT,
    "basis" TEXT,
    "flow_s" DOUBLE PRECISION,
    "hypochlorite_s" DOUBLE PRECISION,
    "dwell_s" DOUBLE PRECISION,
    "activation_s" DOUBLE PRECISION,
    "volume_ml" DOUBLE PRECISION,
    "hypochlorite_ml" DOUBLE PRECISION,
    "disagrees" BOOLEAN NOT NULL DEFAULT false,
    "uses" INTEGER NOT NULL,
    "separations" INTEGER NOT NULL,
    "uses_unknown" INTEGER NOT NULL,
    "uses_held" INTEGER NOT NULL,
    "timer_reset" TEXT,
    "working_length_mm" DOUBLE PRECISION,
    "length_method" TEXT,

    CONSTRAINT "canal_facts_pkey" PRIMARY KEY ("visit_id","canal")
);

-- CreateTable
CREATE TABLE "visit_facts" (
    "visit_id" BIGINT NOT NULL,
    "practice" TEXT NOT NULL,
    "chair" TEXT NOT NULL,
    "clinician" TEXT NOT NULL,
    "worker" TEXT NOT NULL,
    "patient" TEXT NOT NULL,
    "local_day" DATE NOT NULL,
    "treatment" TEXT NOT NULL,
    "outcome" TEXT NOT NULL,
    "exclusion" TEXT,
    "continuous" BOOLEAN NOT NULL,
    "volume_ml" DOUBLE PRECISION,
    "uses" INTEGER NOT NULL,
    "separations" INTEGER NOT NULL,
    "uses_unknown" INTEGER NOT NULL,
    "uses_held" INTEGER NOT NULL,

    CONSTRAINT "visit_facts_pkey" PRIMARY KEY ("visit_id")
);

-- CreateIndex
CREATE UNIQUE INDEX "users_email_key" ON "users"("email");

-- CreateIndex
CREATE UNIQUE INDEX "sign_ins_token_key" ON "sign_ins"("token");

-- CreateIndex
CREATE INDEX "sign_ins_user_id_idx" ON "sign_ins"("user_id");

-- CreateIndex
CREATE INDEX "accounts_user_id_idx" ON "accounts"("user_id");

-- CreateIndex
CREATE INDEX "verifications_identifier_idx" ON "verifications"("identifier");

-- CreateIndex
CREATE UNIQUE INDEX "rate_limits_key_key" ON "rate_limits"("key");

-- CreateIndex
CREATE INDEX "grants_user_id_idx" ON "grants"("user_id");

-- CreateIndex
CREATE INDEX "import_files_import_id_idx" ON "import_files"("import_id");

-- CreateIndex
CREATE INDEX "witnesses_file_id_idx" ON "witnesses"("file_id");

-- CreateIndex
CREATE UNIQUE INDEX "held_digest_key" ON "held"("digest");

-- CreateIndex
CREATE INDEX "held_session_id_idx" ON "held"("session_id");

-- CreateIndex
CREATE INDEX "held_file_id_idx" ON "held"("file_id");

-- CreateIndex
CREATE INDEX "held_table_name_state_idx" ON "held"("table_name", "state");

-- CreateIndex
CREATE INDEX "sessions_local_day_idx" ON "sessions"("local_day");

-- CreateIndex
CREATE INDEX "sessions_session_id_idx" ON "sessions"("session_id");

-- CreateIndex
CREATE UNIQUE INDEX "sessions_practice_session_id_key" ON "sessions"("practice", "session_id");

-- CreateIndex
CREATE INDEX "instruments_instrument_id_idx" ON "instruments"("instrument_id");

-- CreateIndex
CREATE INDEX "canal_facts_local_day_practice_idx" ON "canal_facts"("local_day", "practice");

-- CreateIndex
CREATE INDEX "canal_facts_worker_local_day_idx" ON "canal_facts"("worker", "local_day");

-- CreateIndex
CREATE INDEX "visit_facts_local_day_practice_idx" ON "visit_facts"("local_day", "practice");

-- CreateIndex
CREATE INDEX "visit_facts_worker_local_day_idx" ON "visit_facts"("worker", "local_day");

-- AddForeignKey
ALTER TABLE "chairs" ADD CONSTRAINT "chairs_practice_fkey" FOREIGN KEY ("practice") REFERENCES "practices"("code") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "clinicians" ADD CONSTRAINT "clinicians_practice_fkey" FOREIGN KEY ("practice") REFERENCES "practices"("code") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "sign_ins" ADD CONSTRAINT "sign_ins_user_id_fkey" FOREIGN KEY ("user_id") REFERENCES "users"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "accounts" ADD CONSTRAINT "accounts_user_id_fkey" FOREIGN KEY ("user_id") REFERENCES "users"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "grants" ADD CONSTRAINT "grants_user_id_fkey" FOREIGN KEY ("user_id") REFERENCES "users"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "grants" ADD CONSTRAINT "grants_practice_fkey" FOREIGN KEY ("practice") REFERENCES "practices"("code") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "notes" ADD CONSTRAINT "notes_user_id_fkey" FOREIGN KEY ("user_id") REFERENCES "users"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "import_files" ADD CONSTRAINT "import_files_import_id_fkey" FOREIGN KEY ("import_id") REFERENCES "imports"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "sessions" ADD CONSTRAINT "sessions_practice_fkey" FOREIGN KEY ("practice") REFERENCES "practices"("code") ON DELETE RESTRICT ON UPDATE CASCADE;
