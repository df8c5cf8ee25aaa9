import { fromAddress } from "../../../_parts/from-address";
import { EditorFrame } from "../../_page/editor-frame";

export const metadata = { title: "Change a criterion" };

export default async function ChangePage(props: {
  params: Promise<{ criterion: string }>;
  searchParams: Promise<Record<string, string | string[] | undefined>>;
}) {
  const [{ criterion }, address] = await Promise.all([props.params, props.searchParams]);
  return <EditorFrame id={fromAddress(criterion)} address={address} />;
}
