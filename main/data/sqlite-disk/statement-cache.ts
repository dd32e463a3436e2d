import type { SqlJsDatabase, SqlJsStatement } from "./load-sql-js.ts";
import { type ParameterPlan, planParameters } from "./sql-parameters.ts";

export interface CachedStatement {
  readonly sql: string;
  readonly plan: ParameterPlan;
  readonly statement: SqlJsStatement;
}

/** Keeps the most recently used statements prepared, so that a repeated one is not parsed again. */
export class StatementCache {
  readonly #database: SqlJsDatabase;
  readonly #capacity: number;
  readonly #idle = new Map<string, CachedStatement>();

  constructor(database: SqlJsDatabase, capacity = 200) {
    this.#database = database;
    this.#capacity = capacity;
  }

  /** Takes the statement out, so that a second use of the same text while this one still runs gets its own. */
  take(sql: string): CachedStatement {
    const kept = this.#idle.get(sql);
    if (kept) {
      this.#idle.delete(sql);
      return kept;
    }
    const plan = planParameters(sql);
    return { sql, plan, statement: this.#database.prepare(sql) };
  }

  /** Gives it back, reset: an unfinished statement would hold its transaction open. */
  giveBack(cached: CachedStatement): void {
    cached.statement.reset();
    if (this.#idle.has(cached.sql)) {
      cached.statement.free();
      return;
    }
    this.#idle.set(cached.sql, cached);
    if (this.#idle.size <= this.#capacity) return;
    const oldest = this.#idle.values().next().value;
    if (oldest) {
      this.#idle.delete(oldest.sql);
      oldest.statement.free();
    }
  }

  get size(): number {
    return this.#idle.size;
  }

  clear(): void {
    for (const { statement } of this.#idle.values()) statement.free();
    this.#idle.clear();
  }
}
