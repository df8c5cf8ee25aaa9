import type { Condition } from "@/lib/protocol/condition";
import type { Criterion } from "@/lib/protocol/criterion";
import { fieldsIn, listsIn } from "@/lib/protocol/looked-at";
import { listOf } from "@/lib/protocol/vocabulary";
import { unitField } from "./condition-sql";
import type { Gathering } from "./gathering";

/** SQL: the fields and lists that a criterion looks at, as the JSON of a lib/protocol/judged-unit without its reasons. */
export function evidenceSql(criterion: Criterion, gathering: Gathering): string {
  const { parameters } = gathering;
  const looked: Condition = {
    all: [criterion.population, criterion.met, ...criterion.exclusions.map(({ when }) => when)],
  };
  const fields = fieldsIn(looked).map(
    (name) => `${parameters.bind(name, "text")}, ${unitField(name, gathering)}`,
  );
  const lists = listsIn(looked).map(
    (name) => `${parameters.bind(name, "text")}, ${itemsOf(name, gathering)}`,
  );
  return `jsonb_build_object('fields', jsonb_strip_nulls(jsonb_build_object(${fields.join(", ")})),
    'lists', jsonb_build_object(${lists.join(", ")}))`;
}

function itemsOf(name: string, gathering: Gathering): string {
  const fields = listOf(gathering.unit, name)?.fields ?? [];
  const pairs = fields.map((field) => `'${field.name}', e."${field.name}"`);
  const items = gathering.of(
    name,
    `jsonb_agg(jsonb_build_object('row', e.row, 'place', e.place, 'rank', e.rank, 'loose', e.loose,
      'fields', jsonb_strip_nulls(jsonb_build_object(${pairs.join(", ")}))) order by e.place nulls last, e.rank, e.row)`,
  );
  return `coalesce(${items}, '[]')`;
}
