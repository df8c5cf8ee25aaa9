import { answering } from "@/app/_parts/answering";
import { personDataFile } from "@/lib/reports/person-data";
import { sentData } from "../sent-data";

/** What is kept about a person (?person=…), for an administrator to hand out; what private notes say is not in it. */
export async function GET(request: Request): Promise<Response> {
  const address = new URL(request.url).searchParams;
  return answering(
    "GET /api/person-data",
    async (viewer) => sentData(await personDataFile(viewer, address.get("person") ?? "")),
    address,
  );
}
