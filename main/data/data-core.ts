import type { Envelope, Operation, OperationRequest, ProgramEvent } from "#shared-lib/contract/operation.ts";
import {
  type InputOf,
  type OperationName,
  type OutputOf,
  operations,
} from "#shared-lib/contract/operations.ts";
import { SillbookError } from "#shared-lib/errors.ts";
import type { Context, ProgramFacts, Signer } from "./context.ts";
import { sqliteVersionSql } from "./database.sql.ts";
import { DeviceMemory } from "./device-memory.ts";
import { SearchIndexer } from "./features/search/indexer.ts";
import { handlers } from "./handlers.ts";
import type { MaintenanceName } from "./maintenance.ts";
import { findPersonSql } from "./people.sql.ts";
import { RecordStore, type TouchedRecord } from "./record-store.ts";
import { refuseUnsafeState } from "./safety-rule.ts";
import type { SqliteFile } from "./sqlite-disk/sqlite-file.ts";

export interface DataCoreOptions {
  readonly folder: string;
  readonly programVersion: string;
  /** Milliseconds since 1970; tests and the demonstration pass their own. */
  readonly wallClock?: () => number;
  readonly emit?: (event: ProgramEvent) => void;
  readonly logUnexpected?: (error: unknown, operation: string) => void;
  /** Tests let every answer be checked against the contract. */
  readonly checkAnswers?: boolean;
  /** Short code of a new database; by default three letters by chance. */
  readonly shortCode?: string;
}

/** Runs one operation of a batch in the name of a person. */
export type BatchAsk = <Name extends Exclude<OperationName, MaintenanceName>>(
  name: Name,
  input: InputOf<Name>,
  person: Signer | null,
) => OutputOf<Name>;

type AnyHandler = (context: Context, input: unknown) => unknown;

/**
 * Runs operations on one open database: validates the input, runs the handler in one transaction where it writes,
 * holds the safety rule, keeps the search index in step, tells what changed. Everything in one thread, one after another.
 */
export class DataCore {
  readonly file: SqliteFile;
  readonly device: DeviceMemory;
  readonly records: RecordStore;
  readonly search: SearchIndexer;
  readonly options: DataCoreOptions;
  readonly #sqliteVersion: string;
  /** People who have signed before, by what they were called; forgotten when any person changes. */
  readonly #signers = new Map<string, Signer>();
  #lastSavedAt: string | null = null;
  #notSaved: string | null = null;

  constructor(file: SqliteFile, options: DataCoreOptions) {
    this.file = file;
    this.options = options;
    const wallClock = options.wallClock ?? Date.now;
    this.device = new DeviceMemory(file, wallClock);
    this.records = new RecordStore(file, this.device, () => this.now());
    this.search = new SearchIndexer(file);
    this.#sqliteVersion = file.get<{ version: string }>(sqliteVersionSql)?.version ?? "";
    file.transaction(() => this.device.load(options.shortCode));
    this.device.committed();
  }

  now(): string {
    return new Date((this.options.wallClock ?? Date.now)()).toISOString();
  }

  /** Answers every request with an envelope; never throws. */
  request(request: OperationRequest): Envelope {
    try {
      return { ok: true, value: this.#run(request) };
    } catch (error) {
      return failure(error, (thrown) => this.options.logUnexpected?.(thrown, request.operation));
    }
  }

  #run(request: OperationRequest): unknown {
    const operation = findOperation(request.operation);
    const input = parseInput(operation, request.input);
    const answer = this.#handle(request, operation, input);
    if (this.options.checkAnswers) {
      const checked = operation.output.safeParse(answer);
      if (!checked.success)
        throw new Error(`${request.operation} answers against its contract: ${checked.error.message}`);
    }
    return answer;
  }

  #handle(request: OperationRequest, operation: Operation, input: unknown): unknown {
    if (operation.kind === "maintenance")
      throw new Error("maintenance is done by the session, not inside the core");
    const handler = handlers[request.operation as keyof typeof handlers] as AnyHandler;
    if (operation.kind === "read") return handler(this.#context(null), input);
    const person = operation.kind === "write" ? this.#signer(request.as) : null;
    return this.write(person, (context) => handler(context, input));
  }

  /** One transaction: rows, change rows, full-text rows and the safety rule stand or fall together. */
  write<Result>(person: Signer | null, work: (context: Context) => Result): Result {
    this.records.begin(person?.id ?? null);
    return this.#commit(
      () => {
        const value = work(this.#context(person));
        refuseUnsafeState(this.file, this.records.touchedLifts, this.records.touched);
        return value;
      },
      () => this.records.touched,
    );
  }

  /**
   * Many operations as one transaction: all of them stand, or none. Each is parsed and held to the safety rule as if it
   * were alone; the search index follows at the end. For the demonstration and for bringing records in.
   */
  batch<Result>(work: (ask: BatchAsk) => Result): Result {
    const touched = new Map<string, TouchedRecord>();
    const ask: BatchAsk = (name, input, person) => {
      const operation = findOperation(name);
      const handler = handlers[name as keyof typeof handlers] as AnyHandler;
      this.records.begin(person?.id ?? null);
      const answer = handler(this.#context(person), parseInput(operation, input));
      refuseUnsafeState(this.file, this.records.touchedLifts, this.records.touched);
      for (const record of this.records.touched) touched.set(`${record.entity} ${record.id}`, record);
      return answer as never;
    };
    return this.#commit(
      () => work(ask),
      () => [...touched.values()],
    );
  }

  #commit<Result>(work: () => Result, touched: () => readonly TouchedRecord[]): Result {
    let result: Result;
    try {
      result = this.file.transaction(() => {
        const value = work();
        this.search.beforeCommit(touched());
        return value;
      });
    } catch (error) {
      this.device.rolledBack();
      this.search.afterRollback();
      if (error instanceof SillbookError && error.code.startsWith("disk-")) this.#notSaved = error.message;
      throw error;
    }
    this.device.committed();
    this.search.afterCommit();
    const saved = touched();
    if (saved.some((record) => record.entity === "person")) this.#signers.clear();
    this.#saved(saved);
    return result;
  }

  #saved(records: readonly TouchedRecord[]): void {
    this.#notSaved = null;
    this.#lastSavedAt = this.now();
    if (records.length > 0) this.options.emit?.({ kind: "changed", records, at: this.#lastSavedAt });
  }

  #context(person: Signer | null): Context {
    const core = this;
    return {
      store: this.file,
      records: this.records,
      device: this.device,
      search: this.search,
      now: this.now(),
      person,
      get program() {
        return core.#facts();
      },
    };
  }

  #facts(): ProgramFacts {
    return {
      dataFolder: this.options.folder,
      programVersion: this.options.programVersion,
      sqliteVersion: this.#sqliteVersion,
      demonstration: this.device.read<boolean>("demonstration") ?? false,
      lastSavedAt: this.#lastSavedAt,
      notSaved: this.#notSaved,
    };
  }

  #signer(as: string | undefined): Signer {
    if (!as) throw new SillbookError("person-missing");
    const known = this.#signers.get(as);
    if (known) return known;
    const person = this.file.get<{ id: string; name: string }>(findPersonSql, { as });
    if (!person)
      throw new SillbookError("person-missing", `There is no person called "${as.slice(0, 80)}".`, { as });
    this.#signers.set(as, person);
    return person;
  }
}

/** @throws SillbookError operation-unknown */
export function findOperation(name: string): Operation {
  if (!Object.hasOwn(operations, name))
    throw new SillbookError("operation-unknown", undefined, { operation: name });
  return operations[name as OperationName] as Operation;
}

export function parseInput(operation: Operation, input: unknown): unknown {
  const parsed = operation.input.safeParse(input ?? {});
  if (parsed.success) return parsed.data;
  const fields = parsed.error.issues.map((issue) => ({
    path: issue.path.map((step) => (typeof step === "symbol" ? step.toString() : step)),
    message: issue.message,
  }));
  const places = fields.map(({ path, message }) => `${path.join(".") || "input"}: ${message}`).join("; ");
  throw new SillbookError("input-invalid", `Nothing was changed. ${places}`.slice(0, 1500), { fields });
}

/** Turns what was thrown into the error half of an envelope. */
export function failure(error: unknown, logUnexpected: (error: unknown) => void): Envelope & { ok: false } {
  if (error instanceof SillbookError) {
    return { ok: false, error: { code: error.code, message: error.message, details: error.details } };
  }
  logUnexpected(error);
  const unexpected = new SillbookError("unexpected");
  return { ok: false, error: { code: unexpected.code, message: unexpected.message, details: {} } };
}
