/** The type that PostgreSQL is to take a value for. */
export type ValueType = "text" | "text[]" | "bigint[]" | "float8" | "boolean" | "date";

/** The values of a query, in the order of their numbers; the first ones stand already. */
export class Parameters {
  private readonly first: number;

  constructor(readonly values: unknown[]) {
    this.first = values.length;
  }

  /** The place of a value in the text of the query. */
  bind(value: unknown, type: ValueType): string {
    const known = this.values.findIndex((one, place) => place >= this.first && same(one, value));
    const place = known === -1 ? this.values.push(value) : known + 1;
    return `$${place}::${type}`;
  }
}

function same(one: unknown, other: unknown): boolean {
  return typeof one === typeof other && JSON.stringify(one) === JSON.stringify(other);
}
