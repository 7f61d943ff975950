/**
 * The only file that knows Prisma's schema engine, an internal package in WebAssembly: it needs no downloaded binary.
 * Of its commands only the comparison of two schemas is used.
 */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { PrismaPg } from '@prisma/adapter-pg';
import { bindMigrationAwareSqlAdapterFactory } from '@prisma/driver-adapter-utils';
import pg from 'pg';

type Engine = typeof import('@prisma/schema-engine-wasm/schema_engine_bg');

const glue = '@prisma/schema-engine-wasm/schema_engine_bg';
let loaded: Promise<Engine> | undefined;

/**
 * The statements that make what a Prisma schema says, in an empty database.
 *
 * @param schema - text of `schema.prisma`
 * @param url - any database the engine may connect to; it changes nothing there
 */
export async function ddlOfSchema(schema: string, url: string): Promise<string> {
  const { SchemaEngine } = await (loaded ??= loadEngine());
  // The adapter ends no pool: it is ours, and ours to end.
  const pool = new pg.Pool({ connectionString: url, max: 2 });
  pool.on('error', () => undefined);
  const files = [{ path: 'schema.prisma', content: schema }];
  try {
    const adapter = bindMigrationAwareSqlAdapterFactory(new PrismaPg(pool));
    const engine = await SchemaEngine.new(
      { datamodels: [['schema.prisma', schema]] },
      () => undefined,
      adapter,
    );
    try {
      const { stdout } = await engine.diff({
        ...{ from: { tag: 'empty' }, to: { tag: 'schemaDatamodel', files } },
        ...{ script: true, exitCode: null, filters: { externalTables: [], externalEnums: [] } },
      });
      return stdout ?? '';
    } finally {
      engine.free();
    }
  } finally {
    await pool.end();
  }
}

async function loadEngine(): Promise<Engine> {
  const engine = (await import('@prisma/schema-engine-wasm/schema_engine_bg')) as Engine & {
    __wbg_set_wasm(exports: unknown): void;
  };
  const binary = fileURLToPath(import.meta.resolve(glue)).replace(/\.js$/, '.wasm');
  const imports = { './schema_engine_bg.js': withoutHoldingTheProcess(engine) };
  const { instance } = await WebAssembly.instantiate(readFileSync(binary), imports);
  engine.__wbg_set_wasm(instance.exports);
  instance.exports.__wbindgen_start?.();
  return engine;
}

/** The engine's timer for its lock would keep a process alive for 10 seconds after the last answer. */
function withoutHoldingTheProcess(engine: object): Record<string, unknown> {
  return Object.fromEntries(
    Object.entries(engine).map(([name, value]: [string, unknown]) =>
      name.startsWith('__wbg_setTimeout')
        ? [name, letGo(value as (...given: unknown[]) => unknown)]
        : [name, value],
    ),
  );
}

function letGo(setTimer: (...given: unknown[]) => unknown) {
  return (...given: unknown[]) => {
    const timer = setTimer(...given);
    (timer as Partial<NodeJS.Timeout>).unref?.();
    return timer;
  };
}
