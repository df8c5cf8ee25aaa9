-- CreateIndex
CREATE INDEX "sessions_started_at_idx" ON "sessions"("started_at");
