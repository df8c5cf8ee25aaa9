/** A method of interval by its name in words. */
export function intervalMethod(method: string): string {
  return names[method] ?? method;
}

const names: Record<string, string> = {
  wilson: "Wilson",
  "clopper-pearson": "Clopper–Pearson, exact",
  "mid-p": "mid-P, exact",
  jeffreys: "Jeffreys",
  newcombe: "Newcombe, method 10",
  "miettinen-nurminen": "Miettinen–Nurminen",
  "median-order-statistics": "order statistics",
  "poisson-exact": "Poisson, exact",
  "poisson-mid-p": "Poisson, mid-P",
  "clustered-wilson": "Wilson, by patient",
  "clustered-clopper-pearson": "Clopper–Pearson on patients",
  woodruff: "Woodruff, by patient",
  "median-difference": "Woodruff's intervals, squared and added",
};
