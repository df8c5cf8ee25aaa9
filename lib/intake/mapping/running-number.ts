/** Rows of one visit and canal stand close to each other, so the latest groups are enough and memory stays bounded. */
const groupsKept = 20_000;

/** Numbers the rows of each group from 1, in the order in which they come. */
export function runningNumber(): (group: string) => number {
  const reached = new Map<string, number>();
  return (group) => {
    const next = (reached.get(group) ?? 0) + 1;
    reached.delete(group);
    reached.set(group, next);
    if (reached.size > groupsKept) {
      const [oldest] = reached.keys();
      if (oldest !== undefined) reached.delete(oldest);
    }
    return next;
  };
}
