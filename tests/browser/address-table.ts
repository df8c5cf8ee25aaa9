import {
  type Answer,
  administrators,
  api,
  clinicians,
  keepers,
  type Line,
  leads,
  officers,
  page,
} from "./address-line";
import { auditAddresses } from "./audit-addresses";
import { criterionAddresses } from "./criterion-addresses";
import type { Known } from "./everybody";
import { mappingAddresses } from "./mapping-addresses";
import { signInAddresses } from "./sign-in-addresses";

const noId = 999_999_999;

/**
 * Every page and route with its addresses. A page that is not one's own answers 403. What lies outside a person's
 * practices answers the same whether it exists or not, so that nothing is confirmed.
 */
export function addressTable(known: Known): Line[] {
  const { visit, imports, people, held } = known;
  const measure = "app/lead/measures/[...measure]/page.tsx";
  const visitPage = "app/visits/[practice]/[session]/page.tsx";
  const exceptionPage = "app/exceptions/[practice]/[session]/[criterion]/page.tsx";
  const importPage = "app/records/imports/[id]/page.tsx";
  const personPage = "app/administration/person/[id]/page.tsx";
  const template = "GET app/api/records/format/[file]/route.ts";
  const criterionPage = "app/protocol/[criterion]/page.tsx";
  const readers = (status: Answer) =>
    Object.fromEntries(
      Object.keys({ ...leads, ...clinicians, ...officers, ...administrators }).map((who) => [
        who,
        status,
      ]),
    );
  const leadOnly = (status: Answer) => ({ "group lead": status, "MEDLAR lead": status });
  const keeperOnly = (status: Answer) => ({
    "record keeper": status,
    "SPINDLE record keeper": status,
  });
  const administratorOnly = (status: Answer) => ({
    administrator: status,
    "SPINDLE administrator": status,
  });
  return [
    page("app/page.tsx", "/", {
      ...leadOnly("to /lead"),
      ...{ "clinician M-03": "to /clinician", "clinician M-06": "to /clinician" },
      ...{ "quality officer": "to /quality", "SPINDLE quality officer": "to /quality" },
      ...keeperOnly("to /records"),
      ...administratorOnly("to /administration"),
    }),
    page("app/lead/page.tsx", "/lead", leads),
    page("app/lead/page.tsx", "/lead?period=2026-Q2&practice=MEDLAR", leads),
    page(measure, "/lead/measures/volume?period=2026-Q2", leads),
    page(measure, "/lead/measures/criterion/isolation?period=2026-Q2", leads),
    page(measure, "/lead/measures/separation-per-use?period=2026-Q2&practice=MEDLAR", leads),
    page(
      measure,
      "/lead/measures/separation-per-canal?period=2026-Q2&whose=clinician:person:HG-01",
      leads,
    ),
    page(measure, "/lead/measures/volume?period=2026-Q2&whose=clinician:nobody", leads),
    // A page that says that there is no such measure.
    page(measure, "/lead/measures/no-such-measure", leadOnly(200)),
    page(measure, "/lead/measures/criterion/no-such-criterion", leadOnly(200)),
    page("app/clinician/page.tsx", "/clinician", clinicians),
    page("app/clinician/page.tsx", "/clinician?period=2026-Q2", clinicians),
    page("app/quality/page.tsx", "/quality?period=2026-Q2", officers),
    page("app/protocol/page.tsx", "/protocol", readers(200)),
    page("app/protocol/page.tsx", "/protocol?practice=SPINDLE", readers(200)),
    page(criterionPage, "/protocol/hypochlorite-floor", readers(200)),
    page(criterionPage, "/protocol/no-such-criterion", readers(404)),
    page("app/protocol/[criterion]/change/page.tsx", "/protocol/chelator/change", leads),
    page("app/protocol/[criterion]/change/page.tsx", "/protocol/none/change", leadOnly(404)),
    page("app/protocol/new/page.tsx", "/protocol/new", leads),
    page("app/quality/report/page.tsx", "/quality/report?period=2026-Q2", officers),
    page("app/exceptions/page.tsx", "/exceptions?period=2026-Q2", { ...leads, ...clinicians }),
    page("app/exceptions/page.tsx", "/exceptions?period=2026-Q2&view=own", {
      ...leads,
      ...clinicians,
    }),
    page(exceptionPage, `/exceptions/MEDLAR/${visit.own}/isolation`, {
      ...leads,
      "clinician M-03": 200,
    }),
    page(exceptionPage, `/exceptions/MEDLAR/${visit.other}/timer-reset?canal=MB1`, {
      ...leads,
      "clinician M-06": 200,
    }),
    page(exceptionPage, `/exceptions/SPINDLE/${visit.spindle}/isolation`, { "group lead": 200 }),
    page(exceptionPage, `/exceptions/MEDLAR/${visit.own}/no-such-criterion`, {
      ...leadOnly(404),
      "clinician M-03": 404,
    }),
    page(exceptionPage, "/exceptions/MEDLAR/no-such-visit/isolation", leadOnly(404)),
    page("app/safety/page.tsx", "/safety?period=2026-Q2", { ...leads, ...clinicians, ...officers }),
    page("app/upkeep/page.tsx", "/upkeep?period=2026-Q2", { ...leads, ...officers }),
    page("app/upkeep/page.tsx", "/upkeep?period=2026-Q2&practice=MEDLAR&task=line-dry", {
      ...leads,
      ...officers,
    }),
    page("app/records/page.tsx", "/records", keepers),
    page("app/records/held/page.tsx", "/records/held", keepers),
    page("app/records/held/page.tsx", "/records/held?state=let-go", keepers),
    page(
      "app/records/held/page.tsx",
      "/records/held?table=irrigation&kind=check&some=yes",
      keepers,
    ),
    page("app/records/held/mends/page.tsx", "/records/held/mends", keepers),
    page(
      "app/records/held/preview/page.tsx",
      "/records/held/preview?table=irrigation&column=irrigant&found=bleech&change=irrigant&how=to&choice=naocl",
      keepers,
    ),
    page("app/records/held/rows/[id]/page.tsx", `/records/held/rows/${held.medlar}`, {
      "record keeper": 200,
      "SPINDLE record keeper": 404,
    }),
    page("app/records/corrections/page.tsx", "/records/corrections", keepers),
    page("app/records/corrections/page.tsx", "/records/corrections?state=standing&row=1", keepers),
    page("app/records/coverage/page.tsx", "/records/coverage", keepers),
    page(
      "app/records/coverage/page.tsx",
      "/records/coverage?period=2026-Q2&practice=QUINCE",
      keepers,
    ),
    page("app/records/format/page.tsx", "/records/format", keepers),
    page("app/administration/page.tsx", "/administration", administrators),
    page("app/administration/practices/page.tsx", "/administration/practices", administrators),
    page("app/administration/levels/page.tsx", "/administration/levels", administrators),
    page("app/administration/log/page.tsx", "/administration/log", administrators),
    page(
      "app/administration/log/page.tsx",
      "/administration/log?day=2026-02-30&person=none&before=x",
      administrators,
    ),

    ...criterionAddresses(visit),
    ...mappingAddresses(),
    ...auditAddresses(known),

    page(visitPage, `/visits/MEDLAR/${visit.own}`, { ...leads, "clinician M-03": 200 }),
    page(visitPage, `/visits/MEDLAR/${visit.other}`, { ...leads, "clinician M-06": 200 }),
    page(visitPage, `/visits/SPINDLE/${visit.spindle}`, { "group lead": 200 }),
    page(visitPage, "/visits/MEDLAR/no-such-visit", leadOnly(404)),
    page(visitPage, "/visits/SPINDLE/no-such-visit", { "group lead": 404 }),
    page(visitPage, "/visits/NOWHERE/1", { "group lead": 404 }),

    page(importPage, `/records/imports/${imports.medlar}`, {
      "record keeper": 200,
      "SPINDLE record keeper": 404,
    }),
    page(importPage, `/records/imports/${imports.spindle}`, keepers),
    page(importPage, `/records/imports/${noId}`, keeperOnly(404)),
    page(importPage, "/records/imports/none", keeperOnly(404)),
    {
      ...page("app/account/page.tsx", "/account", {}),
      others: 200,
    },
    { ...api("GET app/api/own-data/route.ts", "/api/own-data", {}), others: 200 },
    api("GET app/api/person-data/route.ts", `/api/person-data?person=${people.lead}`, {
      administrator: 200,
      "SPINDLE administrator": 404,
    }),
    api("GET app/api/person-data/route.ts", "/api/person-data", administratorOnly(404)),
    page(personPage, `/administration/person/${people.lead}`, {
      administrator: 200,
      "SPINDLE administrator": 404,
    }),
    page(personPage, `/administration/person/${people.spindleQuality}`, administrators),
    page(personPage, "/administration/person/none", administratorOnly(404)),

    api(
      "GET app/api/quality/adherence/route.ts",
      "/api/quality/adherence?period=2026-Q2",
      officers,
    ),
    api(
      "GET app/api/quality/adherence/route.ts",
      "/api/quality/adherence?period=2026-Q2&practice=SPINDLE&format=xlsx",
      officers,
    ),
    api(
      "GET app/api/quality/adherence/route.ts",
      "/api/quality/adherence?period=2026-Q2&practice=QUINCE",
      {
        ...{ "quality officer": 200, "SPINDLE quality officer": 400 },
      },
    ),
    api("GET app/api/quality/upkeep/route.ts", "/api/quality/upkeep?period=2026-Q2", {
      ...leads,
      ...officers,
    }),
    api(
      "GET app/api/quality/upkeep/route.ts",
      "/api/quality/upkeep?period=2026-Q2&practice=QUINCE",
      {
        ...{ "group lead": 200, "MEDLAR lead": 400 },
        ...{ "quality officer": 200, "SPINDLE quality officer": 400 },
      },
    ),
    api("POST app/api/records/import/route.ts", "/api/records/import", keeperOnly(400), {
      zone: "UTC",
    }),
    api(template, "/api/records/format/sessions.csv", keepers),
    api(template, "/api/records/format/no-such-file.csv", keeperOnly(404)),
    ...signInAddresses(),
  ];
}
