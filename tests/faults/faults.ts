import { ground, type Outcome } from "./ground";
import { kills } from "./kills";

const points = Number(process.argv[2] ?? 200);
const from = performance.now();
const on = await ground(150, 1);
try {
  console.log(`base after ${((performance.now() - from) / 1000).toFixed(1)} s`);
  const outcomes: Outcome[] = await kills(on, points, (l) => console.log(l));
  console.log(JSON.stringify(outcomes, null, 1));
} finally {
  await on.close();
}
console.log(`${((performance.now() - from) / 1000).toFixed(1)} s`);
