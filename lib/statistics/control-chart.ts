export type { BaselineRange } from "@/lib/statistics/baseline-range";
export type { ControlChart, ControlPoint } from "@/lib/statistics/control-point";
export { gChart } from "@/lib/statistics/g-chart";
export { pChart } from "@/lib/statistics/p-chart";
export { chooseP, pPrimeChart } from "@/lib/statistics/p-prime-chart";
export { tChart } from "@/lib/statistics/t-chart";
export { uChart } from "@/lib/statistics/u-chart";
export { xmrChart } from "@/lib/statistics/xmr-chart";
