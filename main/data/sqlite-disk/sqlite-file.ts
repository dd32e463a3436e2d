import type { SqlJsDatabase } from "./load-sql-js.ts";
import type { RedirectedCalls } from "./redirected-calls.ts";
import { arrangeParameters } from "./sql-parameters.ts";
import { begin, commit, rollback } from "./sqlite-disk.sql.ts";
import { explainSqliteError } from "./sqlite-error.ts";
import { type CachedStatement, StatementCache } from "./statement-cache.ts";

/** What can be stored. An integer beyond 2^53 is read as bigint, every other number as number. */
export type SqlValue = number | string | null | bigint | Uint8Array;
/** `{ name: value }` for `:name` in the statement, or a list for `?`. */
export type SqlParameters = Readonly<Record<string, SqlValue>> | readonly SqlValue[];
export type SqlRow = Record<string, SqlValue>;

/**
 * One SQLite database on the real disk. A statement that returns has left its data on the disk (outside of a transaction)
 * or in the journalled transaction. Errors: `SillbookError` with disk-full, disk-denied, disk-failed, store-damaged or
 * store-foreign; `SqliteError` for a mistake in a statement or a broken rule of the schema.
 *
 * @example
 * const row = file.get<{ name: string }>("SELECT name FROM lift WHERE id = :id", { id });
 */
export class SqliteFile {
  readonly path: string;
  readonly #database: SqlJsDatabase;
  readonly #calls: RedirectedCalls;
  readonly #statements: StatementCache;
  #inTransaction = false;
  #failedTransaction: Error | undefined;
  #closed = false;

  constructor(path: string, database: SqlJsDatabase, calls: RedirectedCalls) {
    this.path = path;
    this.#database = database;
    this.#calls = calls;
    this.#statements = new StatementCache(database);
  }

  /** Runs one or more statements without values and without a result. */
  exec(sql: string): void {
    this.#guard(sql, () => this.#database.run(sql));
  }

  /** Runs one INSERT, UPDATE or DELETE and tells how many rows it changed (for anything else the number has no meaning). */
  run(sql: string, parameters?: SqlParameters): { readonly changes: number } {
    return this.#withStatement(sql, parameters, (cached) => {
      while (cached.statement.step());
      return { changes: this.#database.getRowsModified() };
    });
  }

  all<Row = SqlRow>(sql: string, parameters?: SqlParameters): Row[] {
    return this.#withStatement(sql, parameters, (cached) => {
      const rows: Row[] = [];
      let names: readonly string[] | undefined;
      while (cached.statement.step()) {
        names ??= cached.statement.getColumnNames();
        rows.push(readRow(cached, names) as Row);
      }
      return rows;
    });
  }

  /** The first row, if there is one. */
  get<Row = SqlRow>(sql: string, parameters?: SqlParameters): Row | undefined {
    return this.#withStatement(sql, parameters, (cached) =>
      cached.statement.step() ? (readRow(cached, cached.statement.getColumnNames()) as Row) : undefined,
    );
  }

  /** Row by row, for results that need not be in memory at once. Leave the loop, or the statement stays unfinished. */
  *iterate<Row = SqlRow>(sql: string, parameters?: SqlParameters): Generator<Row, void, undefined> {
    const cached = this.#guard(sql, () => this.#take(sql, parameters));
    try {
      let names: readonly string[] | undefined;
      while (this.#guard(sql, () => cached.statement.step())) {
        names ??= cached.statement.getColumnNames();
        yield readRow(cached, names) as Row;
      }
    } finally {
      if (!this.#closed) this.#statements.giveBack(cached);
    }
  }

  /**
   * Runs `work` in one transaction. If it throws, or the commit fails, everything is rolled back and the error is thrown on.
   * After a disk error inside `work` SQLite may have rolled back already, so every further statement of the same `work`
   * is refused with that error: it would otherwise be committed alone.
   */
  transaction<Result>(work: () => Result): Result {
    if (this.#inTransaction) throw new Error("A transaction was started inside another one.");
    this.exec(begin);
    this.#inTransaction = true;
    try {
      const result = work();
      if (result instanceof Promise)
        throw new Error("A transaction cannot wait: its work must not be async.");
      this.exec(commit);
      return result;
    } catch (error) {
      this.#rollBack();
      throw error;
    } finally {
      this.#inTransaction = false;
      this.#failedTransaction = undefined;
    }
  }

  get inTransaction(): boolean {
    return this.#inTransaction;
  }

  get isClosed(): boolean {
    return this.#closed;
  }

  close(): void {
    if (this.#closed) return;
    this.#closed = true;
    try {
      this.#statements.clear();
      this.#database.close();
    } catch (error) {
      throw explainSqliteError(error, "close", this.#calls.lastFailure);
    } finally {
      this.#calls.closeAll();
    }
  }

  /** Size of the engine's memory, in bytes. */
  memoryBytes(): number {
    return this.#calls.memory.byteLength();
  }

  /** How often a file or folder was flushed to the disk since the opening. */
  get syncCount(): number {
    return this.#calls.syncCount;
  }

  #rollBack(): void {
    this.#failedTransaction = undefined;
    try {
      this.exec(rollback);
    } catch {
      // After some disk errors SQLite has rolled back by itself, and says so here. Whatever else goes wrong now is less
      // than the error that is being reported; SQLite repeats the rollback from the journal at the next access.
    }
  }

  #take(sql: string, parameters: SqlParameters | undefined): CachedStatement {
    const cached = this.#statements.take(sql);
    try {
      cached.statement.bind(arrangeParameters(cached.plan, parameters, sql));
      return cached;
    } catch (error) {
      this.#statements.giveBack(cached);
      throw error;
    }
  }

  #withStatement<Result>(
    sql: string,
    parameters: SqlParameters | undefined,
    use: (cached: CachedStatement) => Result,
  ): Result {
    return this.#guard(sql, () => {
      const cached = this.#take(sql, parameters);
      try {
        return use(cached);
      } finally {
        this.#statements.giveBack(cached);
      }
    });
  }

  #guard<Result>(sql: string, work: () => Result): Result {
    if (this.#closed) throw new Error(`The database is closed: ${this.path}`);
    if (this.#failedTransaction) throw this.#failedTransaction;
    this.#calls.lastFailure = undefined;
    try {
      return work();
    } catch (error) {
      const explained = explainSqliteError(error, sql, this.#calls.lastFailure);
      if (this.#inTransaction && explained.name === "SillbookError") this.#failedTransaction = explained;
      throw explained;
    }
  }
}

function readRow(cached: CachedStatement, names: readonly string[]): SqlRow {
  const values = cached.statement.get();
  const row: SqlRow = {};
  for (let index = 0; index < names.length; index += 1) {
    const value = values[index] ?? null;
    const isTooLarge = typeof value === "number" && Number.isInteger(value) && !Number.isSafeInteger(value);
    row[names[index] ?? ""] = isTooLarge ? readExactly(cached, index) : value;
  }
  return row;
}

// sql.js reads integers as floating point; one beyond 2^53 is read a second time, exactly.
function readExactly(cached: CachedStatement, index: number): SqlValue {
  return cached.statement.get(null, { useBigInt: true })[index] ?? null;
}
