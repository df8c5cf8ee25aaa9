import { createHash } from "node:crypto";
import { documentPdf } from "@/lib/reports/pdf/document-pdf";
import { madeReport } from "./made-report";

/** Run by itself: the hash of the made report's PDF at the time given. */
const bytes = await documentPdf(madeReport(), new Date(process.argv[2] ?? ""));
console.log(createHash("sha256").update(bytes).digest("hex"));
