import { redirect } from "next/navigation";

/** An audit opens with its scope. */
export default async function AuditPage(props: { params: Promise<{ id: string }> }) {
  const { id } = await props.params;
  redirect(`/audits/${encodeURIComponent(id)}/scope`);
}
