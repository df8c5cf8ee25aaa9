import { EditorFrame } from "../_page/editor-frame";

export const metadata = { title: "Add a criterion" };

export default async function NewPage(props: {
  searchParams: Promise<Record<string, string | string[] | undefined>>;
}) {
  return <EditorFrame id={null} address={await props.searchParams} />;
}
