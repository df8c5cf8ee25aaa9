import type { UnitKind } from "@/lib/protocol/criterion";
import { type Gathered, gatheredSql, inTurn } from "./gathered-sql";
import { listSql } from "./list-sql";
import type { Parameters } from "./parameters";
import { records, type Tables } from "./tables";

/** What makes units of a kind one of their own among those asked for, as far as lists hang on them. */
const keys: Readonly<Partial<Record<UnitKind, readonly string[]>>> = {
  canal: ["visit_id", "canal"],
  visit: ["visit_id"],
  "chair-day": ["practice", "chair", "local_day"],
};

const restsOn: Readonly<Record<string, readonly Gathered[]>> = {
  deliveries: ["deliveries"],
  course: ["course", "deliveries"],
  uses: ["uses"],
};

/**
 * What a criterion needs of its units' lists and steps, gathered in one pass over each list for all units asked for, and joined to
 * them: looking a list up for each unit by itself takes many times as long where units are many, and no less where there is one.
 */
export class Gathering {
  private readonly lists = new Map<string, string[]>();
  private readonly others = new Map<string, string>();
  private readonly gathered = new Set<Gathered>();
  readonly tables: Tables;

  /** @param copies the copies of the run, where all that is gathered lies in tables of its own already. */
  constructor(
    readonly unit: UnitKind,
    readonly parameters: Parameters,
    private readonly copies?: Tables,
  ) {
    this.tables = copies ?? records;
  }

  /** Something is joined that needs a relation of `gathered-sql`. */
  looksAt(name: Gathered): void {
    this.gathered.add(name);
    if (name === "course") this.gathered.add("treated");
  }

  /** SQL: what the joins rest on, of the facts `u` of the units asked for; a list of common table expressions. */
  withs(facts: string): string[] {
    const names = inTurn.filter((name) => this.gathered.has(name));
    if (names.length === 0 && this.lists.size === 0) return [];
    return [
      `asked as ${this.copies ? "not materialized" : "materialized"} (select * from ${facts})`,
      ...(this.copies ? [] : names).map(
        (name) => `${name} as materialized (${gatheredSql(name, this.gathered.has("course"))})`,
      ),
    ];
  }

  /** SQL: what an aggregate over the items `e` of a list comes to for a unit; null where it has no items. */
  of(list: string, aggregate: string): string {
    const asked = this.lists.get(list) ?? [];
    this.lists.set(list, asked);
    for (const name of restsOn[list] ?? []) this.looksAt(name);
    const known = asked.indexOf(aggregate);
    const place = known === -1 ? asked.push(aggregate) - 1 : known;
    return `l${[...this.lists.keys()].indexOf(list)}.a${place}`;
  }

  /** SQL: the alias of a further join, which is made once; `join` makes it of its alias. */
  joined(name: string, join: (alias: string) => string): string {
    const alias = `j${[...this.others.keys(), name].indexOf(name)}`;
    if (!this.others.has(name)) this.others.set(name, join(alias));
    return alias;
  }

  /** SQL: the joins to the units `u`. */
  joins(): string {
    const key = keys[this.unit] ?? [];
    const lists = [...this.lists].map(([list, aggregates], place) => {
      const columns = aggregates.map((aggregate, column) => `${aggregate} as a${column}`);
      const by = key.map((name) => `e.${name}`).join(", ");
      const on = key.map((name) => `l${place}.${name} = u.${name}`).join(" and ");
      return `left join (select ${by}, ${columns.join(", ")} from ${listSql(this.unit, list, this.parameters)} e group by ${by}) l${place} on ${on}`;
    });
    return [...lists, ...this.others.values()].join("\n        ");
  }
}
