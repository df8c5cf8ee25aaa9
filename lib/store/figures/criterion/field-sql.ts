import type { UnitKind } from "@/lib/protocol/criterion";
import { activationSeconds, flow, flowSeconds, volume } from "./delivery-sql";
import { openDays, toldYet, whatBecame } from "./followup-sql";
import { mainIrrigant } from "./main-irrigant-sql";

/**
 * The fields of lib/protocol/vocabulary as SQL, over the sources of `source-sql`: u the facts of the canal or visit, c
 * its canal, v its visit, i the delivery or use.
 */
export const fieldSql: Readonly<Record<UnitKind, Readonly<Record<string, string>>>> = {
  canal: { ...canal("c"), ...visit() },
  delivery: { ...delivery("c.timer_reset"), ...canal("c"), ...visit() },
  use: { ...use(), ...canal("c"), ...visit() },
  separation: {
    ...use(),
    ...canal("c"),
    ...visit(),
    third: "i.third",
    fragment_mm: "i.fragment_mm",
    management: whatBecame,
    patient_told: toldYet,
    open_days: openDays,
  },
  visit: {
    powered: "u.powered",
    continuous: "u.continuous",
    held_rows: "u.held_rows::float8",
    ...visit(),
  },
  "chair-day": {},
};

/** SQL: the name of the unit's canal. */
export function canalOf(unit: UnitKind): string {
  if (unit === "visit") return "''";
  return unit === "canal" ? "u.canal" : "i.canal";
}

/** The fields of a delivery `i`. */
export function delivery(timerReset: string): Record<string, string> {
  return {
    irrigant: "i.irrigant",
    concentration_pct: "i.concentration_pct",
    volume_ml: volume(timerReset),
    flow_ml_min: flow(timerReset),
    duration_s: flowSeconds(timerReset),
    dwell_s: "i.dwell_s",
    activation: "i.activation",
    activation_s: activationSeconds,
    basis: "i.basis",
    delivery: "i.delivery",
    tip_short_mm: "i.tip_short_mm",
    whole_tooth: "i.canal = ''",
  };
}

/** The fields of a use `i`. */
export function use(): Record<string, string> {
  return {
    kind: "i.kind",
    size: "i.size::float8",
    taper_pct: "i.taper_pct",
    lot: "i.lot",
    steriliser_cycle: "i.steriliser_cycle",
    single_use: "i.single_use",
    use_number: "i.use_number::float8",
    speed_per_min: "i.speed_per_min",
    torque_n_cm: "i.torque_n_cm",
  };
}

/** The fields of a canal `c`. */
export function canal(c: string): Record<string, string> {
  return {
    preparation: `${c}.preparation`,
    working_length_mm: `${c}.working_length_mm`,
    length_method: `${c}.length_method`,
    curvature_deg: `${c}.curvature_deg`,
    apex: `${c}.apex`,
    apical_size: `${c}.apical_size::float8`,
    preparation_s: `${c}.preparation_s`,
    timer_reset: `${c}.timer_reset`,
    filled: `${c}.filled`,
    fragment_on_arrival: `${c}.fragment_on_arrival`,
    main_irrigant: mainIrrigant(c),
  };
}

function visit(): Record<string, string> {
  return {
    treatment: "v.treatment",
    outcome: "v.outcome",
    pulp: "v.pulp",
    difficulty: "v.difficulty",
    // The groups of teeth as lib/records/tooth has them.
    tooth_group:
      "case when right(v.tooth, 1) <= '3' then 'incisor or canine' when v.tooth >= '51' or right(v.tooth, 1) >= '6' then 'molar' else 'premolar' end",
    jaw: "case when left(v.tooth, 1) in ('1', '2', '5', '6') then 'upper' else 'lower' end",
    dentition: "case when v.tooth >= '51' then 'primary' else 'permanent' end",
  };
}
