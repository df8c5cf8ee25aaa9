import { within } from "@/app/_parts/within";
import { Refused } from "@/lib/access/refused";
export const dynamic = "force-dynamic";
export default async function Page() {
  await within(async () => { await new Promise(r => setTimeout(r, 300)); throw new Refused("Sentence of the refusal."); });
  return <p>ok</p>;
}
