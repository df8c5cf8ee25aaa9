import { type Answer, api, clinicians, type Line, leads, officers, page } from "./address-line";
import type { Known } from "./everybody";

const steps = [
  ...["scope", "data", "results", "confirming", "look", "actions", "signature"],
  ...["report", "history"],
];
const text = "app/api/audits/[id]/text/route.ts";
const prepared = "GET app/api/quality/prepared/[id]/[period]/route.ts";
const report = "GET app/api/audits/[id]/report/route.ts";
const summary = "GET app/api/clinician/audits/[id]/summary/route.ts";

/** Audits of one practice and of the group; what is another's answers as what is not there. */
export function auditAddresses({ audits }: Known): Line[] {
  const own = (status: Answer): Line["answers"] => ({
    "clinician M-03": status,
    "clinician M-06": status,
  });
  const leadOnly = (status: Answer): Line["answers"] => ({
    "group lead": status,
    "MEDLAR lead": status,
  });
  return [
    page("app/audits/page.tsx", "/audits", leads),
    page("app/audits/prepared/page.tsx", "/audits/prepared", leads),
    page("app/quality/prepared/page.tsx", "/quality/prepared", officers),
    api(prepared, "/api/quality/prepared/999999999/2026-Q2", {
      ...{ "quality officer": 404, "SPINDLE quality officer": 404 },
    }),
    {
      ...{ of: "app/audits/[id]/page.tsx", address: `/audits/${audits.medlar}` },
      ...{ nobody: "to /sign-in", answers: {}, others: `to /audits/${audits.medlar}/scope` },
    },
    ...steps.flatMap((step) => {
      const file = `app/audits/[id]/${step}/page.tsx`;
      return [
        page(file, `/audits/${audits.medlar}/${step}`, leads),
        page(file, `/audits/${audits.group}/${step}`, {
          ...{ "group lead": 200, "MEDLAR lead": 404 },
        }),
        page(file, `/audits/none/${step}`, leadOnly(404)),
      ];
    }),
    page("app/clinician/audits/page.tsx", "/clinician/audits", clinicians),
    page("app/clinician/audits/[id]/page.tsx", `/clinician/audits/${audits.medlar}`, clinicians),
    page("app/clinician/audits/[id]/page.tsx", `/clinician/audits/${audits.group}`, own(404)),
    page(
      "app/clinician/audits/[id]/summary/page.tsx",
      `/clinician/audits/${audits.medlar}/summary?reflection=yes`,
      clinicians,
    ),
    page("app/clinician/audits/[id]/summary/page.tsx", "/clinician/audits/none/summary", own(404)),

    api(`GET ${text}`, `/api/audits/${audits.medlar}/text`, leads),
    api(`GET ${text}`, `/api/audits/${audits.group}/text`, {
      ...{ "group lead": 200, "MEDLAR lead": 404 },
    }),
    // What is sent as a form is no JSON.
    api(`POST ${text}`, `/api/audits/${audits.medlar}/text`, leadOnly(400), { key: "purpose" }),
    api(report, `/api/audits/${audits.medlar}/report`, leads),
    api(report, `/api/audits/${audits.group}/report?clinicians=codes`, {
      ...{ "group lead": 200, "MEDLAR lead": 404 },
    }),
    api(report, "/api/audits/none/report", leadOnly(404)),
    api(summary, `/api/clinician/audits/${audits.medlar}/summary`, clinicians),
    api(summary, "/api/clinician/audits/none/summary", own(404)),
  ];
}
