import type { ColumnFacts } from "./column-facts";
import type { FeedDraft, MappingDraft } from "./draft";
import type { PreviewView } from "./preview-view";
import type { TableTerms } from "./terms";
import type { TestView } from "./test-view";

/** What the editor of a mapping begins with. */
export type EditorView = {
  /** The file that waits; null where a kept mapping is changed without one. */
  readonly file: { readonly id: number; readonly name: string; readonly rows: string } | null;
  readonly draft: MappingDraft;
  readonly columns: readonly ColumnFacts[];
  readonly terms: readonly TableTerms[];
  /** Why a field was proposed to be fed so; it holds as long as the field is fed so. */
  readonly reasons: readonly Reasoned[];
  /** A number of which it cannot be told what its mark means; null where there is none. */
  readonly decimalUnsettled: string | null;
  readonly zones: readonly string[];
  /** Kept mappings with their newest versions. */
  readonly kept: readonly { readonly name: string; readonly version: number }[];
  readonly preview: PreviewView | null;
  readonly test: TestView;
};

export type Reasoned = {
  readonly table: string;
  readonly field: string;
  readonly feed: FeedDraft;
  readonly why: string;
};
