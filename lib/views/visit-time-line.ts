import type { Values } from "@/lib/records/column";
import { axisOf } from "./axis";
import { inTradeOrder } from "./canal-order";
import type { ChartAxis } from "./chart-rows";
import { decimal, duration } from "./quantity";
import { reasonWords } from "./reason-words";
import { irrigantWords } from "./record-words";
import { useWords } from "./use-words";

/** A stretch on the line, in seconds from its start. */
export type Stretch = {
  readonly from: number;
  readonly seconds: number;
  readonly kind: "preparation" | "flow" | "dwell";
  readonly irrigant: string | null;
};

/** One thing done in a canal: its words and, where its time is recorded, where it lies. */
export type LineRow = {
  readonly id: string;
  readonly words: string;
  readonly stretches: readonly Stretch[];
  readonly at: number | null;
};

/** What was done in one canal, or for the whole tooth. */
export type Lane = {
  readonly canal: string;
  readonly title: string;
  readonly facts: string;
  readonly rows: readonly LineRow[];
  /** Instruments in their order; `separated` asks for a mark. */
  readonly uses: readonly {
    readonly id: string;
    readonly words: string;
    readonly separated: boolean;
  }[];
};

export type TimeLine = {
  readonly axis: ChartAxis;
  readonly byClock: boolean;
  readonly note: string;
  readonly lanes: readonly Lane[];
};

/** The canals of a visit along one line of time: by the clock where every delivery has its time, else in their order. */
export function timeLine(
  canals: readonly Values[],
  deliveries: readonly Values[],
  uses: readonly Values[],
): TimeLine {
  const byClock = deliveries.length > 0 && deliveries.every((one) => one.started_at !== undefined);
  const first = Math.min(...deliveries.map((one) => Date.parse(String(one.started_at))));
  const startOf = (one: Values, after: number) =>
    byClock ? (Date.parse(String(one.started_at)) - first) / 1000 : after;
  const whole = deliveries.some((one) => one.canal === "") ? [{ canal: "" }] : [];
  const lanes = [
    ...[...canals].sort((one, other) => inTradeOrder(String(one.canal), String(other.canal))),
    ...whole,
  ].map((canal): Lane => {
    const mine = (rows: readonly Values[]) =>
      rows.filter((row) => row.canal === canal.canal).sort((a, b) => Number(a.seq) - Number(b.seq));
    const rows = deliveryRows(mine(deliveries), canal, startOf);
    return {
      canal: String(canal.canal),
      title: canal.canal === "" ? "Whole tooth" : `Canal ${canal.canal}`,
      facts:
        canal.canal === ""
          ? "Deliveries written down for the tooth, not for a canal."
          : canalWords(canal),
      rows: [...preparationRow(canal, rows), ...rows],
      uses: mine(uses).map((use) => ({
        id: String(use.seq),
        words: useWords(use),
        separated: Number(use.separated ?? 0) > 0,
      })),
    };
  });
  const ends = lanes.flatMap((lane) =>
    lane.rows.flatMap((row) => row.stretches.map((one) => one.from + one.seconds)),
  );
  return {
    axis: axisOf(ends, "s", "", true),
    byClock,
    note: byClock ? clockNote : orderNote,
    lanes,
  };
}

function deliveryRows(
  deliveries: readonly Values[],
  canal: Values,
  startOf: (one: Values, after: number) => number,
): LineRow[] {
  let after = 0;
  return deliveries.map((one) => {
    const from = startOf(one, after);
    const [flow, dwell] = [flowSeconds(one), Number(one.dwell_s ?? 0)];
    const irrigant = String(one.irrigant);
    const stretches: Stretch[] =
      flow === null ? [] : [{ from, seconds: flow, kind: "flow", irrigant }];
    if (dwell > 0)
      stretches.push({ from: from + (flow ?? 0), seconds: dwell, kind: "dwell", irrigant });
    after = from + (flow ?? 0) + dwell;
    return {
      id: String(one.seq),
      words: deliveryWords(one, flow, canal),
      stretches,
      at: flow === null ? from : null,
    };
  });
}

/** Preparation is drawn beside the first continuous delivery, which flows while the file works; its own moment is not recorded. */
function preparationRow(canal: Values, rows: readonly LineRow[]): LineRow[] {
  if (canal.preparation === undefined || canal.preparation === "none") return [];
  const from = rows[0]?.stretches[0]?.from ?? 0;
  const seconds = typeof canal.preparation_s === "number" ? canal.preparation_s : null;
  const words = `Preparation, ${reasonWords(String(canal.preparation))}, ${seconds === null ? "time not recorded" : duration(seconds)}`;
  return [
    {
      id: "preparation",
      words,
      stretches: seconds === null ? [] : [{ from, seconds, kind: "preparation", irrigant: null }],
      at: seconds === null ? from : null,
    },
  ];
}

function flowSeconds(one: Values): number | null {
  if (typeof one.duration_s === "number") return one.duration_s;
  return typeof one.volume_ml === "number" && typeof one.flow_ml_min === "number"
    ? (one.volume_ml / one.flow_ml_min) * 60
    : null;
}

function deliveryWords(one: Values, flow: number | null, canal: Values): string {
  const strength = typeof one.concentration_pct === "number" ? ` ${one.concentration_pct} %` : "";
  const volume =
    typeof one.volume_ml === "number" ? `${decimal(one.volume_ml, 1)} mL` : "volume not recorded";
  const derived = flow !== null && one.duration_s === undefined ? " by volume and flow" : "";
  const unreset =
    one.basis === "timer" && canal.timer_reset === "no"
      ? ", timer not reset: the time is not counted"
      : "";
  const dwell =
    typeof one.dwell_s === "number" && one.dwell_s > 0 ? `, left ${duration(one.dwell_s)}` : "";
  const activated =
    one.activation !== undefined && one.activation !== "none"
      ? `, ${reasonWords(String(one.activation))} activation${typeof one.activation_s === "number" ? ` ${duration(one.activation_s)}` : ""}`
      : "";
  const time = flow === null ? "time not recorded" : `${duration(flow)}${derived}`;
  return `${one.seq}. ${irrigantWords(one.irrigant)}${strength}, ${volume}, ${time}${dwell}${activated}, ${reasonWords(String(one.delivery))}${unreset}`;
}

function canalWords(canal: Values): string {
  const length =
    typeof canal.working_length_mm === "number"
      ? `working length ${decimal(canal.working_length_mm, 1)} mm`
      : "working length not recorded";
  const method =
    canal.length_method === undefined
      ? "how it was found not recorded"
      : `by ${canal.length_method === "both" ? "locator and radiograph" : canal.length_method}`;
  const curve = typeof canal.curvature_deg === "number" ? `curvature ${canal.curvature_deg}°` : "";
  const size = typeof canal.apical_size === "number" ? `apical size ${canal.apical_size}` : "";
  const filled = canal.filled === undefined ? "" : canal.filled ? "filled" : "not filled";
  const fragment = canal.fragment_on_arrival === true ? "a fragment was there on arrival" : "";
  const who = canal.clinician === undefined ? "" : `by ${canal.clinician}`;
  return [`${length}, ${method}`, curve, size, filled, fragment, who].filter(Boolean).join("; ");
}

const clockNote =
  "Every delivery has its time: they stand where the clock had them, counted from the first.";
const orderNote =
  "The order within a canal is known, the clock time is not: each canal starts at the left and its deliveries follow one another. Pauses between them are not recorded.";
