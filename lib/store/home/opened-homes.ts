const opened = new Set<() => Promise<void>>();

/** Remembers how a home that this process has opened is closed, until it is; answers that same way to close it. */
export function toBeClosed(close: () => Promise<void>): () => Promise<void> {
  const closing = async () => {
    await close();
    opened.delete(closing);
  };
  opened.add(closing);
  return closing;
}

/** Closes every home that this process still has open: for a process that is told to end in the middle of its work. */
export async function closeHomes(): Promise<void> {
  await Promise.allSettled([...opened].map((close) => close()));
}
