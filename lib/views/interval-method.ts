/** A method of interval by its name in words. */
export function intervalMethod(method: string): string {
  return names[method] ?? method;
}

const names: Record<string, string> = {
  wilson: "Wilson",
  "clopper-pearson": "Clopper–Pearson, exact",
  "median-order-statistics": "order statistics",
};
