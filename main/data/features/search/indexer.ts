import { calculators } from "#shared-lib/calculators/registry.ts";
import { type SearchDocument, sillbookIndexShape } from "#shared-lib/search/index-shape.ts";
import { SearchIndex } from "#shared-lib/search/search-index.ts";
import type { TouchedRecord } from "../../record-store.ts";
import type { Store } from "../../store.ts";
import { type AffectedDocument, AffectedDocuments } from "./affected-documents.ts";
import { readIndexFile, writeIndexFile } from "./index-file.ts";
import {
  deleteDocumentSql,
  enterTextSql,
  findDocumentSql,
  forgetTextSql,
  insertDocumentSql,
  scanDocumentsSql,
  updateDocumentSql,
} from "./search.sql.ts";
import {
  type DocumentRow,
  documentKey,
  readDocument,
  type StoredKind,
  toSearchDocument,
} from "./search-documents.ts";

interface StoredDocument extends DocumentRow {
  readonly docid: number;
}

type IndexStep = { readonly key: string; readonly document: DocumentRow | null };

const documentsAtOnce = 500;
const allScanned = Number.POSITIVE_INFINITY;
/** Fewer documents are read anew at the next start in less time than writing the file takes. */
const worthKeeping = 2000;
const placeFields = ["title", "place", "site", "controllerFamily", "drive"] as const;

/**
 * Keeps what is searched in step with every commit: in the transaction the rows of `searchDocument` and the database's
 * own full-text index, after it the ranked index in memory. At start that one is read from the file where it was kept
 * and follows what was written since, or is built from the rows: in the background, a slice at a time, so that requests
 * in between never wait for it. Until then the full-text index finds the candidates.
 */
export class SearchIndexer {
  readonly #store: Store;
  #index = newIndex();
  #prepared: IndexStep[] = [];
  #warm = false;
  #scannedTo = 0;
  /** Documents that were written since the index file was kept. */
  #notKept = 0;
  #toFollow: readonly AffectedDocument[] = [];

  constructor(store: Store) {
    this.#store = store;
  }

  get index(): SearchIndex {
    return this.#index;
  }

  readonly calculatorDocuments = calculatorDocuments;

  /** False while the ranked index is still being built. */
  get isWarm(): boolean {
    return this.#warm;
  }

  /** Inside the transaction: writes the documents of everything that was touched. */
  beforeCommit(touched: readonly TouchedRecord[]): void {
    const affected = new AffectedDocuments(this.#store);
    for (const record of touched) affected.addTouched(record);
    const movedLifts: string[] = [];
    for (const { kind, id } of affected.list) {
      const moved = this.#write(kind, id);
      if (moved && kind === "lift") movedLifts.push(id);
    }
    const following = new AffectedDocuments(this.#store);
    for (const liftId of movedLifts) following.addAllOfLift(liftId);
    for (const { kind, id } of following.list) this.#write(kind, id);
  }

  afterCommit(): void {
    this.#notKept += this.#prepared.length;
    for (const { key, document } of this.#prepared) {
      if (document) this.#index.add(toSearchDocument(document));
      else this.#index.remove(key);
    }
    this.#prepared = [];
  }

  afterRollback(): void {
    this.#prepared = [];
  }

  /** Takes the index that was kept in a file, where it belongs to this database; `buildSlice` then does the rest. */
  async read(file: string): Promise<void> {
    const kept = await readIndexFile(file, this.#store, calculatorDocuments);
    if (!kept || this.#warm || this.#scannedTo > 0) return;
    const affected = new AffectedDocuments(this.#store);
    for (const record of kept.touched) {
      affected.addTouched(record);
      if (record.entity === "lift") affected.addAllOfLift(record.id);
      if (record.entity === "site") affected.addAllOfSite(record.id);
    }
    this.#index = kept.index;
    this.#toFollow = affected.list;
    this.#scannedTo = allScanned;
  }

  /** Keeps the index in a file when enough has changed since that was done. @throws what the disk says */
  keep(file: string): void {
    if (!this.#warm || this.#notKept < worthKeeping) return;
    writeIndexFile(file, this.#index, this.#store, calculatorDocuments);
    this.#notKept = 0;
  }

  /** Builds the next slice of the ranked index; true when there is nothing left to build. */
  buildSlice(): boolean {
    if (this.#warm) return true;
    const isLast = this.#scannedTo === allScanned ? this.#followSlice() : this.#scanSlice();
    if (!isLast) return false;
    this.#warm = true;
    return true;
  }

  #scanSlice(): boolean {
    const rows = this.#store.all<StoredDocument>(scanDocumentsSql, {
      after: this.#scannedTo,
      limit: documentsAtOnce,
    });
    if (this.#scannedTo === 0) this.#index.hold();
    for (const row of rows) this.#index.add(toSearchDocument(row));
    this.#notKept += rows.length;
    this.#scannedTo = rows.at(-1)?.docid ?? this.#scannedTo;
    if (rows.length === documentsAtOnce) return false;
    this.#index.release();
    return true;
  }

  #followSlice(): boolean {
    const slice = this.#toFollow.slice(0, documentsAtOnce);
    this.#toFollow = this.#toFollow.slice(documentsAtOnce);
    for (const { kind, id } of slice) {
      const row = this.#store.get<StoredDocument>(findDocumentSql, { kind, ref: id });
      if (row) this.#index.add(toSearchDocument(row));
      else this.#index.remove(documentKey(kind, id));
    }
    this.#notKept += slice.length;
    return this.#toFollow.length === 0;
  }

  /** Builds everything at once: for tests, the command line and long imports. */
  buildAll(): void {
    while (!this.buildSlice());
  }

  /** Writes one document; true when the place it names changed. */
  #write(kind: StoredKind, id: string): boolean {
    const old = this.#store.get<StoredDocument>(findDocumentSql, { kind, ref: id });
    const now = readDocument(this.#store, kind, id);
    const key = documentKey(kind, id);
    if (old && now && sameDocument(old, now)) return false;
    if (old) this.#store.run(forgetTextSql, { docid: old.docid });
    if (old && !now) this.#store.run(deleteDocumentSql, { docid: old.docid });
    if (now) {
      this.#store.run(old ? updateDocumentSql : insertDocumentSql, { ...now });
      this.#store.run(enterTextSql, { kind, ref: id });
    }
    if (old || now) this.#prepared.push({ key, document: now ?? null });
    return old !== undefined && now !== undefined && placeFields.some((field) => old[field] !== now[field]);
  }
}

/** Calculators come with the program, not with the data: they are in the index from the first moment. */
const calculatorDocuments: readonly SearchDocument[] = calculators.map((calculator) => ({
  key: documentKey("calculator", calculator.id),
  kind: "calculator",
  fields: { title: calculator.name, symptom: calculator.words.join("\n"), body: calculator.purpose },
}));

function sameDocument(old: StoredDocument, now: DocumentRow): boolean {
  return Object.entries(now).every(([field, value]) => old[field as keyof DocumentRow] === value);
}

function newIndex(): SearchIndex {
  const index = new SearchIndex(sillbookIndexShape);
  index.addAll(calculatorDocuments);
  return index;
}
