-- DropIndex
DROP INDEX "canal_facts_worker_local_day_idx";

-- DropIndex
DROP INDEX "visit_facts_worker_local_day_idx";

-- CreateIndex
CREATE INDEX "canal_facts_worker_local_day_visit_id_idx" ON "canal_facts"("worker", "local_day", "visit_id");

-- CreateIndex
CREATE INDEX "visit_facts_worker_local_day_visit_id_idx" ON "visit_facts"("worker", "local_day", "visit_id");
