import { families } from "./families";
import { compare } from "./family";

// Prints how far each family lies from its reference. Run from the project folder:
//   npx tsx --tsconfig lib/command/tsconfig.json tests/statistics/reference/largest-disagreement.ts
console.log("| family | cases | reference | largest absolute | largest relative | over 1e-9 |");
console.log("|---|---|---|---|---|---|");
for (const family of families) {
  const { cases, reference, absolute, relative, faults } = compare(family);
  const [far, share] = [absolute, relative].map((value) => value.toExponential(1));
  console.log(
    `| ${family.file} | ${cases} | ${reference} | ${far} | ${share} | ${faults.length} |`,
  );
}
