import type { Locator, Page } from "@playwright/test";

/** Drops a file of the disk as a person would, with the mouse. */
export async function dropFile(page: Page, on: Locator, path: string): Promise<void> {
  await on.scrollIntoViewIfNeeded();
  const box = await on.boundingBox();
  if (!box) throw new Error("There is nothing to drop the file on.");
  const session = await page.context().newCDPSession(page);
  const at = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  const data = { items: [], files: [path], dragOperationsMask: 1 };
  for (const type of ["dragEnter", "dragOver", "drop"] as const) {
    await session.send("Input.dispatchDragEvent", { type, ...at, data });
  }
  await session.detach();
}
