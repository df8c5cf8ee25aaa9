import { PrismaPg } from "@prisma/adapter-pg";
import { ColumnTypeEnum, DriverAdapterError, type SqlQuery } from "@prisma/driver-adapter-utils";
import pg from "pg";
import { SCRIPT_RUNS } from "./migrating";

/**
 * Prisma's adapter for a schema engine that reads PostgreSQL's catalogues. Some of their columns are of
 * the internal type "char", which the adapter refuses: here they are told as single characters. Scripts go
 * to the server whole.
 */
export class CatalogueAdapter extends PrismaPg {
  constructor(private readonly pool: CataloguePool) {
    super(pool);
  }

  override async connect() {
    const adapter = await super.connect();
    const ask = adapter.queryRaw.bind(adapter);
    adapter.queryRaw = async (query: SqlQuery) => {
      const found = await ask(query);
      // The engine asks one thing after the other, so the pool's last answer is this one.
      for (const index of this.pool.charColumns) {
        found.columnTypes[index] = ColumnTypeEnum.Character;
      }
      return found;
    };
    // The adapter cuts scripts at every semicolon, also inside functions; sent whole, a script is one transaction.
    adapter.executeScript = async (script: string) => {
      await this.pool.query(`${begins}\n${script}\n;${ends}`).catch(told);
    };
    return adapter;
  }
}

const begins = `select pg_advisory_xact_lock(${SCRIPT_RUNS});`;

/** A migration is done and known to be done in one transaction: the engine would tell of it in a second one. */
const ends = `do $ends$ begin
  if to_regclass('_prisma_migrations') is not null then
    update _prisma_migrations set finished_at = now() where finished_at is null and rolled_back_at is null;
  end if;
end $ends$`;

// Object numbers of the types: pg_type.dat of PostgreSQL 18.
const INTERNAL_CHAR = 18;
const TEXT = 25;

/** A pool that passes "char" off as text and remembers in which columns of its last answer it did. */
export class CataloguePool extends pg.Pool {
  charColumns: number[] = [];

  override query = (async (...words: unknown[]) => {
    const ask = pg.Pool.prototype.query as (...words: unknown[]) => Promise<pg.QueryResult>;
    const found = await ask.apply(this, words);
    this.charColumns = [];
    for (const [index, field] of ([found].flat().at(-1)?.fields ?? []).entries()) {
      if (field.dataTypeID !== INTERNAL_CHAR) continue;
      field.dataTypeID = TEXT;
      this.charColumns.push(index);
    }
    return found;
  }) as pg.Pool["query"];
}

/** PostgreSQL's refusal in the shape in which the engine passes its words on. */
function told(error: unknown): never {
  if (!(error instanceof pg.DatabaseError)) throw error;
  const { code = "", severity = "", message, detail, column, hint } = error;
  throw new DriverAdapterError({ kind: "postgres", code, severity, message, detail, column, hint });
}
