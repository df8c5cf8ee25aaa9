-- AlterTable
ALTER TABLE "imports" ADD COLUMN     "tries" INTEGER NOT NULL DEFAULT 0;
