import { type Answer, api, keepers, type Line, page } from "./address-line";

const noFile = "/api/records/waiting/999999999";
const waitingPage = "app/records/waiting/[id]/page.tsx";
const preview = "POST app/api/records/waiting/[id]/preview/route.ts";
const test = "app/api/records/waiting/[id]/test/route.ts";
const words = "GET app/api/records/waiting/[id]/words/route.ts";
const file = "GET app/api/records/mappings/[name]/route.ts";

/** Files that wait, and the mappings by which such files are read. */
export function mappingAddresses(): Line[] {
  return [
    page("app/records/waiting/page.tsx", "/records/waiting", keepers),
    page("app/records/waiting/page.tsx", "/records/waiting?import=1", keepers),
    page(waitingPage, "/records/waiting/999999999", keeperOnly(404)),
    page(waitingPage, "/records/waiting/none", keeperOnly(404)),
    page("app/records/mappings/page.tsx", "/records/mappings", keepers),
    page("app/records/mappings/[name]/page.tsx", "/records/mappings/none", keeperOnly(404)),
    page(
      "app/records/mappings/[name]/change/page.tsx",
      "/records/mappings/none/change",
      keeperOnly(404),
    ),

    api("GET app/api/records/mapping-schema/route.ts", "/api/records/mapping-schema", keepers),
    api(file, "/api/records/mappings/none", keeperOnly(404)),
    api(file, "/api/records/mappings/none?version=x", keeperOnly(404)),
    // What is sent as a form is no JSON.
    api(preview, `${noFile}/preview`, keeperOnly(400), { name: "Smuggled" }),
    api(`POST ${test}`, `${noFile}/test`, keeperOnly(400), { name: "Smuggled" }),
    api(`GET ${test}`, `${noFile}/test`, keeperOnly(404)),
    api(words, `${noFile}/words?column=Dam`, keeperOnly(404)),
  ];
}

function keeperOnly(status: Answer): Line["answers"] {
  return { "record keeper": status, "SPINDLE record keeper": status };
}
