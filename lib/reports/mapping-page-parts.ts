import type { RecordsReach } from "@/lib/access/reach";
import type { Mapping } from "@/lib/intake/mapping/mapping";
import { keptMappings } from "@/lib/store/mappings";
import type { EditorView } from "@/lib/views/mapping/editor-view";
import { mappingTerms } from "./mapping-terms";

/** What the editor needs whether there is a file or not. */
export async function editorParts(
  reach: RecordsReach,
  draft: Mapping,
): Promise<Pick<EditorView, "draft" | "terms" | "zones" | "kept">> {
  const kept = await keptMappings(reach);
  return {
    draft,
    terms: mappingTerms(),
    zones: [...new Set(["UTC", ...Intl.supportedValuesOf("timeZone")])].sort(),
    kept: kept.map(({ name, version }) => ({ name, version })),
  };
}
