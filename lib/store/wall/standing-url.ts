import { everyPractice } from "./told-sql";

/**
 * The address of a database, where a connection stands as the holder, who sees everything, or as nobody, until a transaction says as whom.
 * It matters where the policies are forced on the owner; the owner of an embedded database passes them anyhow.
 */
export function standingUrl(url: string, as: "holder" | "nobody"): string {
  const address = new URL(url);
  const options = (address.searchParams.get("options") ?? "").replaceAll(ours, "").trim();
  const records = as === "holder" ? `{${everyPractice}}` : "{}";
  const told = `-c canal_audit.standing=${as} -c canal_audit.records=${records}`;
  address.searchParams.set("options", `${options} ${told}`.trim());
  // A plus sign would be read as one.
  address.search = address.search.replaceAll("+", "%20");
  return address.href;
}

const ours = /-c canal_audit\.\w+=\S+/g;
