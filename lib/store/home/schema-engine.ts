import { readFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { bindMigrationAwareSqlAdapterFactory } from "@prisma/driver-adapter-utils";
import * as engineCode from "@prisma/schema-engine-wasm/schema_engine_bg";
import { CatalogueAdapter, CataloguePool } from "./catalogue-adapter";

/** Prisma's own schema engine, compiled to WebAssembly, bound to one database. */
export type SchemaEngine = engineCode.SchemaEngine;

/**
 * Loads the engine (once a process), binds it to the database of this address, lets `work` use it and
 * ends its connections.
 */
export async function withSchemaEngine<T>(
  url: string,
  work: (engine: SchemaEngine) => Promise<T>,
): Promise<T> {
  ready ??= load();
  await ready;
  const pool = new CataloguePool({ connectionString: url });
  const adapter = bindMigrationAwareSqlAdapterFactory(new CatalogueAdapter(pool));
  const engine = await engineCode.SchemaEngine.new({ datamodels: undefined }, () => {}, adapter);
  try {
    return await work(engine);
  } finally {
    engine.free();
    await pool.end();
  }
}

let ready: Promise<void> | undefined;

/** The package's own entry imports the .wasm as a module, which Node cannot do yet: done by hand here. */
async function load(): Promise<void> {
  const entry = createRequire(import.meta.url).resolve(
    "@prisma/schema-engine-wasm/schema_engine_bg",
  );
  const bytes = await readFile(entry.replace(/\.js$/, ".wasm"));
  const imports = { "./schema_engine_bg.js": withoutWaiting(engineCode) };
  const { instance } = await WebAssembly.instantiate(bytes, imports);
  engineCode.__wbg_set_wasm(instance.exports);
  (instance.exports.__wbindgen_start as () => void)();
}

/** The engine never clears the 10 s alarm of its lock; that must not keep a process that has nothing else to do. */
function withoutWaiting(code: object): WebAssembly.ModuleImports {
  const imports: WebAssembly.ModuleImports = { ...code };
  for (const [name, given] of Object.entries(imports)) {
    if (!name.startsWith("__wbg_setTimeout") || typeof given !== "function") continue;
    imports[name] = (...words: unknown[]) => {
      const timer = given(...words);
      if (timer instanceof Object && "unref" in timer) timer.unref();
      return timer;
    };
  }
  return imports;
}
