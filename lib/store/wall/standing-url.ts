/**
 * The address of a database, where a connection stands as the holder, who sees everything, or as nobody, until a transaction says as whom.
 * It matters where the policies are forced on the owner; the owner of an embedded database passes them anyhow.
 */
export function standingUrl(url: string, as: "holder" | "nobody"): string {
  const address = new URL(url);
  const options = (address.searchParams.get("options") ?? "").replace(standing, "").trim();
  address.searchParams.set("options", `${options} -c canal_audit.standing=${as}`.trim());
  // A plus sign would be read as one.
  address.search = address.search.replaceAll("+", "%20");
  return address.href;
}

const standing = /-c canal_audit\.standing=\w+/;
