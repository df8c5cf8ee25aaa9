import { recordsReach } from "@/lib/access/reach";
import type { Viewer } from "@/lib/access/viewer";
import { type Mapping, mappingSchema } from "@/lib/intake/mapping/mapping";
import {
  filesByMapping,
  type KeptMapping,
  keptMappings,
  mappingNamed,
  versionsOfMapping,
} from "@/lib/store/mappings";
import { practicesWithin } from "@/lib/store/records/practices";
import type { EditorView } from "@/lib/views/mapping/editor-view";
import {
  type MappingLine,
  type MappingView,
  mappingLine,
  mappingView,
} from "@/lib/views/mapping/mapping-lines";
import { editorParts } from "./mapping-page-parts";
import { mappingTerms } from "./mapping-terms";

/** The kept mappings, newest versions, by name. @throws Refused */
export async function mappingsPage(viewer: Viewer): Promise<readonly MappingLine[]> {
  const reach = recordsReach(viewer);
  const [kept, files, practices] = await Promise.all([
    keptMappings(reach),
    filesByMapping(reach),
    practicesWithin(reach),
  ]);
  const zone = practices[0]?.zone ?? "UTC";
  return kept.map((one) => mappingLine(withMapping(one), files.get(one.name) ?? 0, zone));
}

/** One version of a mapping in words, the newest where none is named; null where there is none. @throws Refused */
export async function mappingPage(
  viewer: Viewer,
  name: string,
  version: string | undefined,
): Promise<MappingView | null> {
  const reach = recordsReach(viewer);
  const [versions, files, practices] = await Promise.all([
    versionsOfMapping(reach, name),
    filesByMapping(reach),
    practicesWithin(reach),
  ]);
  const shown = versions.find((one) => version === undefined || String(one.version) === version);
  if (!shown) return null;
  return mappingView(withMapping(shown), {
    versions,
    files: files.get(name) ?? 0,
    zone: practices[0]?.zone ?? "UTC",
    terms: mappingTerms(),
  });
}

/** The newest version of a mapping to be changed without a file; null where there is none. @throws Refused */
export async function mappingEditor(viewer: Viewer, name: string): Promise<EditorView | null> {
  const reach = recordsReach(viewer);
  const kept = await mappingNamed(reach, name);
  if (!kept) return null;
  const draft = mappingSchema.parse(kept.definition);
  return {
    ...(await editorParts(reach, draft)),
    file: null,
    columns: draft.columns.map(nothingKnown),
    reasons: [],
    decimalUnsettled: null,
    preview: null,
    test: { state: "none" },
  };
}

function nothingKnown(name: string): EditorView["columns"][number] {
  return {
    ...{ name, filled: 0, empty: 0, different: null, numbers: 0, minutesSeconds: 0 },
    ...{ hoursMinutesSeconds: 0, isoDurations: 0, clocks: [], timesOfDay24: 0, timesOfDay12: 0 },
    teeth: {},
  };
}

function withMapping(kept: KeptMapping): KeptMapping & { readonly mapping: Mapping } {
  return { ...kept, mapping: mappingSchema.parse(kept.definition) };
}
