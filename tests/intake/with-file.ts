import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";

/** Does something with a file of this content, which is gone afterwards. */
export async function withFile<Result>(
  content: string | Uint8Array,
  use: (path: string) => Promise<Result>,
): Promise<Result> {
  const folder = await mkdtemp(join(tmpdir(), "canal-audit-file-"));
  try {
    const path = join(folder, "file");
    await writeFile(path, content);
    return await use(path);
  } finally {
    await rm(folder, { recursive: true });
  }
}
