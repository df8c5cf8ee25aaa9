import { answering } from "@/app/_parts/answering";
import { ownDataFile } from "@/lib/reports/person-data";
import { sentData } from "../sent-data";

/** What is kept about the viewer, with what they alone may read. */
export async function GET(): Promise<Response> {
  return answering("GET /api/own-data", async (viewer) => sentData(await ownDataFile(viewer)));
}
