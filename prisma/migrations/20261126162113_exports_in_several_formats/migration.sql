-- AlterTable
ALTER TABLE "exports" ADD COLUMN     "fingerprint" TEXT,
ADD COLUMN     "format" TEXT NOT NULL DEFAULT 'csv';
