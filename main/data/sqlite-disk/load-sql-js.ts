import fs from "node:fs";
import { createRequire } from "node:module";
import path from "node:path";
import { compileFunction } from "node:vm";
import type { RedirectedCalls, SystemCalls } from "./redirected-calls.ts";
import { diskError } from "./sqlite-error.ts";
import type { GrowingMemory } from "./wasm-memory.ts";

/** The part of a sql.js statement that is used here. */
export interface SqlJsStatement {
  bind(values: readonly (number | string | Uint8Array | null)[]): boolean;
  step(): boolean;
  get(
    values?: null,
    settings?: { readonly useBigInt: boolean },
  ): (number | string | Uint8Array | bigint | null)[];
  getColumnNames(): string[];
  reset(): boolean;
  free(): boolean;
}

/** The part of a sql.js database that is used here. */
export interface SqlJsDatabase {
  run(sql: string): unknown;
  prepare(sql: string): SqlJsStatement;
  getRowsModified(): number;
  close(): void;
}

interface SqlJs {
  readonly Database: new (content: Uint8Array) => SqlJsDatabase;
}

type Imports = Record<string, SystemCalls>;
interface Instance {
  readonly exports: { readonly memory: GrowingMemory };
}
interface SqlJsSettings {
  readonly useOldExtensionFunctions: boolean;
  readonly printErr: () => void;
  readonly instantiateWasm: (imports: Imports, done: (instance: Instance) => void) => void;
}

interface WebAssemblyOfNode {
  readonly Module: new (bytes: Uint8Array) => object;
  readonly Instance: new (module: object, imports: Imports) => Instance;
}
// The types of Node leave WebAssembly out; they come with the DOM, which is not for this folder.
const { WebAssembly } = globalThis as unknown as { readonly WebAssembly: WebAssemblyOfNode };

let compiledEngine: { readonly file: string; readonly module: object } | undefined;

/**
 * Starts an engine of its own for one database, whose system calls are `calls`.
 * The debug build of sql.js is used because only its imports have names; it is not slower.
 */
export async function loadSqlJs(calls: RedirectedCalls): Promise<SqlJsDatabase> {
  const script = unpacked(createRequire(import.meta.url).resolve("sql.js/dist/sql-wasm-debug.js"));
  let failure: unknown;
  const settings: SqlJsSettings = {
    useOldExtensionFunctions: false,
    // What goes wrong arrives as an error; the engine's own remarks are not for the person.
    printErr: () => {},
    instantiateWasm(imports, done) {
      try {
        const instance = new WebAssembly.Instance(compile(script), replaceImports(imports, calls));
        calls.memory.attach(instance.exports.memory);
        done(instance);
      } catch (error) {
        failure = error;
        throw error;
      }
    },
  };
  const start = evaluateAnew(script);
  const sqlJs = await Promise.race([start(settings), failed(() => failure)]);
  // An empty file in the memory file system is what sql.js removes when it closes; SQLite never sees it.
  try {
    return new sqlJs.Database(new Uint8Array(0));
  } catch (error) {
    // Without a database there is no text either: sql.js says "out of memory" whatever happened.
    const { lastFailure } = calls;
    throw lastFailure
      ? diskError(lastFailure.code, { call: lastFailure.call, path: lastFailure.path })
      : error;
  }
}

// sql.js starts one engine per evaluation of its script. Each database has its own engine, so the script is evaluated
// anew; it is small beside the engine, whose compiled form is shared. The debug build tells the console whenever its
// memory grows: it gets a console of its own.
function evaluateAnew(script: string): (settings: SqlJsSettings) => Promise<SqlJs> {
  const module: { exports: unknown } = { exports: {} };
  const quietConsole = { log() {}, warn() {}, error() {} };
  const names = ["module", "exports", "require", "__filename", "__dirname", "console"];
  const evaluate = compileFunction(fs.readFileSync(script, "utf8"), names, { filename: script });
  evaluate(module, module.exports, createRequire(script), script, path.dirname(script), quietConsole);
  return module.exports as (settings: SqlJsSettings) => Promise<SqlJs>;
}

// When the engine cannot be started sql.js never settles its promise, so the failure is looked up one turn later.
async function failed(failure: () => unknown): Promise<never> {
  await new Promise((resolve) => setImmediate(resolve));
  if (failure() !== undefined) throw failure();
  return new Promise(() => {});
}

function compile(script: string): object {
  const file = script.replace(/\.js$/, ".wasm");
  if (compiledEngine?.file !== file) {
    compiledEngine = { file, module: new WebAssembly.Module(fs.readFileSync(file)) };
  }
  return compiledEngine.module;
}

// The engine asks for its imports under two names that hold the same functions.
function replaceImports(imports: Imports, calls: RedirectedCalls): Imports {
  const all: SystemCalls = Object.assign({}, ...Object.values(imports));
  const replaced = calls.replaceIn(all);
  return Object.fromEntries(Object.keys(imports).map((name) => [name, replaced]));
}

// A packaged program keeps its files in an archive that only Electron's own functions can read; the engine lies beside it.
function unpacked(file: string): string {
  return file.replace(`app.asar${path.sep}`, `app.asar.unpacked${path.sep}`);
}
