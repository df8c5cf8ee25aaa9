import { api, clinicians, type Line, leads, officers, page } from "./address-line";
import type { Known } from "./everybody";

const units = "app/units/[...measure]/page.tsx";
const why = "app/explanations/[criterion]/[practice]/visit/[session]/page.tsx";
const whyChair = "app/explanations/[criterion]/[practice]/chair/[chair]/[day]/page.tsx";

/** The units behind figures, why each counts as it does, and a criterion over the quarters. */
export function criterionAddresses(visit: Known["visit"]): Line[] {
  return [
    page(
      "app/quality/criteria/[criterion]/page.tsx",
      "/quality/criteria/isolation?period=2026-Q2",
      officers,
    ),
    page(units, "/units/criterion/isolation?period=2026-Q2", {
      ...leads,
      ...clinicians,
      ...officers,
    }),
    page(units, "/units/volume?period=2026-Q2&outcome=not-recorded&page=2", {
      ...leads,
      ...clinicians,
      ...officers,
    }),
    page(why, `/explanations/isolation/MEDLAR/visit/${visit.own}`, {
      ...leads,
      "clinician M-03": 200,
      "quality officer": 200,
    }),
    page(why, `/explanations/no-such-criterion/MEDLAR/visit/${visit.own}`, {
      "group lead": 404,
      "MEDLAR lead": 404,
      "clinician M-03": 404,
      "quality officer": 404,
    }),
    page(whyChair, "/explanations/line-rinse/MEDLAR/chair/MEDLAR-1/1999-01-01", {
      "group lead": 404,
      "MEDLAR lead": 404,
      "quality officer": 404,
    }),

    api(
      "GET app/api/units/[...measure]/route.ts",
      "/api/units/criterion/isolation?period=2026-Q2&outcome=not-met",
      { ...leads, ...clinicians, ...officers },
    ),
  ];
}
