/** A method of interval by its name in words. */
export function intervalMethod(method: string): string {
  return names[method] ?? method;
}

const names: Record<string, string> = {
  wilson: "Wilson",
  "clopper-pearson": "Clopper–Pearson, exact",
  "mid-p": "mid-P, exact",
  jeffreys: "Jeffreys",
  newcombe: "Newcombe",
  "miettinen-nurminen": "Miettinen–Nurminen",
  "median-order-statistics": "order statistics",
  "poisson-exact": "Poisson, exact",
  "poisson-mid-p": "Poisson, mid-P",
  "clustered-wilson": "Wilson, units of one patient allowed for",
  "clustered-clopper-pearson": "Clopper–Pearson over patients, exact",
  woodruff: "Woodruff, values of one patient allowed for",
  "median-difference": "Woodruff's intervals, squared and added",
  hypergeometric: "hypergeometric, exact",
  woodruff: "Woodruff, by patient",
  "square-and-add-medians": "difference of Woodruff intervals",
  "clustered-wilson": "Wilson, by patient",
  "clustered-clopper-pearson": "Clopper–Pearson on patients",
  newcombe: "Newcombe, method 10",
  "poisson-exact": "exact Poisson",
};
