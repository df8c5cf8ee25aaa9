import type pg from "pg";
import { type TableName, tableNames } from "@/lib/records/tables";
import { beginPublishing, endPublishing, type Publishing, publishTable } from "./publish";
import { hangsOnVisit } from "./stored-columns";

/**
 * Publishes the tables of one import as soon as no more rows of them or of what they hang on are to come, while other files are still
 * read. All of it is one transaction, and comes to what `publish` comes to at the end.
 */
export class InSteps {
  readonly #left: TableName[] | undefined;
  readonly #done = new Set<TableName>();
  #begun = false;

  /** @param toCome the table of every sheet that will be read; undefined where that is not known: then nothing is published early */
  constructor(
    readonly client: pg.ClientBase,
    readonly how: Publishing,
    toCome: readonly TableName[] | undefined,
  ) {
    this.#left = toCome && [...toCome];
  }

  /** A sheet of the table begins. @throws Error where it was told that none would come */
  begins(table: TableName): void {
    if (this.#done.has(table))
      throw new Error(`The files were changed while they were read: there are more ${table}.`);
  }

  /** The rows of one sheet are staged: the tables that can be published now. */
  staged(table: TableName): TableName[] {
    const place = this.#left?.indexOf(table) ?? -1;
    if (this.#left === undefined || place < 0) return [];
    this.#left.splice(place, 1);
    const ready = tableNames.filter((one) => this.#isReady(one));
    for (const one of ready) this.#done.add(one);
    return ready;
  }

  async publish(table: TableName): Promise<void> {
    if (!this.#begun) await beginPublishing(this.client);
    this.#begun = true;
    await publishTable(this.client, table, this.how);
  }

  /** All sheets are read: the rest. */
  async end(): Promise<void> {
    for (const table of tableNames) if (!this.#done.has(table)) await this.publish(table);
    await endPublishing(this.client, this.how);
  }

  #isReady(table: TableName): boolean {
    if (this.#done.has(table)) return false;
    const before = tableNames.slice(0, tableNames.indexOf(table));
    const needed = [table, ...(hangsOnVisit(table) ? before.filter(bearsVisits) : [])];
    return !needed.some((one) => this.#left?.includes(one));
  }
}

function bearsVisits(table: TableName): boolean {
  return table === "sessions" || hangsOnVisit(table);
}
