import { expect, test } from "vitest";
import { holderReach, recordsReach } from "@/lib/access/reach";
import { chairsKnown, coverageDays, firstDays } from "@/lib/store/records/coverage-days";
import { bringIn, canal, delivery, visit } from "../bring-in";
import { eachOnEmptyDatabase } from "../empty-database";

// Expected values are worked by hand.

eachOnEmptyDatabase();
const reach = holderReach().records;
const july = { from: "2026-07-01", until: "2026-08-01" };

test("a chair's day tells its visits, what came with them and the devices", async () => {
  await bringIn({
    sessions: [
      visit,
      { ...visit, session_id: "V-2" },
      { ...visit, session_id: "V-3", chair: "OAK-2", treatment: "emergency" },
    ],
    canals: [
      { ...canal, device: "M2" },
      { ...canal, session_id: "V-2", device: "M1" },
    ],
    irrigation: [delivery],
    upkeep: [
      {
        practice: "OAK",
        chair: "OAK-2",
        day: "2026-07-03",
        task: "line-rinse",
        status: "not-done",
      },
      { practice: "OAK", chair: "OAK-3", day: "2026-07-03", task: "line-rinse", status: "done" },
    ],
  });
  const day = { practice: "OAK", day: "2026-07-03", instruments: false };
  expect(await coverageDays(reach, july, undefined)).toEqual([
    {
      ...day,
      chair: "OAK-1",
      visits: 2,
      treated: true,
      deliveries: true,
      upkeep: false,
      devices: ["M1", "M2"],
    },
    {
      ...day,
      chair: "OAK-2",
      visits: 1,
      treated: false,
      deliveries: false,
      upkeep: true,
      devices: [],
    },
  ]);
  expect(await coverageDays(reach, { ...july, until: "2026-07-03" }, undefined)).toEqual([]);
  expect(await coverageDays(reach, july, "ELM")).toEqual([]);
  const chairs = ["OAK-1", "OAK-2", "OAK-3"];
  expect((await chairsKnown(reach, undefined)).map(({ chair }) => chair)).toEqual(chairs);
  expect([...(await firstDays(reach))]).toEqual([["OAK", "2026-07-03"]]);
  const grants = [{ role: "record-keeper" as const, practice: "ELM", clinicianKey: null }];
  const theirs = recordsReach({ userId: "u", name: "n", email: "e@elm.example", grants });
  expect(await coverageDays(theirs, july, undefined)).toEqual([]);
  expect(await chairsKnown(theirs, undefined)).toEqual([]);
  expect([...(await firstDays(theirs))]).toEqual([]);
});
