import type { PreviewView } from "@/lib/views/protocol/preview-view";

/** What the server answers to a criterion that is being edited: its counts, or what must be set first. */
export type Counted = {
  readonly view?: PreviewView;
  readonly wrong?: Readonly<Partial<Record<string, string>>>;
};
