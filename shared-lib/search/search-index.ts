import { SillbookError } from "../errors.ts";
import { DocumentStore, fieldFlag, termMask } from "./document-store.ts";
import { addOne, type SequencePostings } from "./find-sequences.ts";
import type { IndexShape, SearchDocument } from "./index-shape.ts";
import { readSnapshot, type SnapshotRefusal, writeSnapshot } from "./index-snapshot.ts";
import { Postings } from "./postings.ts";
import { rankDocuments, type SearchOptions, type SearchResult } from "./rank-documents.ts";
import { type RankingSettings, rankingSettings } from "./ranking-settings.ts";
import { DocumentScorer, type IndexParts } from "./score-documents.ts";
import type { SearchQuery } from "./search-query.ts";
import { Vocabulary, type WordsInUse } from "./vocabulary.ts";

const compactFrom = 1024;
const compactShare = 0.25;
/** Postings that may wait in the pool before they are laid out with the others. */
const mostAdded = 250_000;

/**
 * The search index: documents in, ranked hits out, all in memory. Not safe to share between threads; one owner (the
 * data worker) keeps it in step with each commit.
 *
 * @example
 * const index = new SearchIndex(sillbookIndexShape);
 * index.add({ key: "1", kind: "callout", fields: { symptom: "doors keep reopening at floor 3" } });
 * index.search(analyseQuery("door reopens 3rd flr", index.words), { limitPerKind: 10 });
 */
export class SearchIndex {
  readonly shape: IndexShape;
  readonly settings: RankingSettings;
  #store: DocumentStore;
  #vocabulary = new Vocabulary();
  #postings = Postings.empty();
  readonly #scorer = new DocumentScorer();
  #counts = new Int32Array(0);
  readonly #knownSequences = new Map<string, SequencePostings>();
  #hold = false;

  constructor(shape: IndexShape, settings: RankingSettings = rankingSettings) {
    if (shape.fields.length > 8) {
      throw new SillbookError("unexpected", "A search index has at most eight fields.");
    }
    this.shape = shape;
    this.settings = settings;
    this.#store = new DocumentStore(shape);
  }

  /** The words in use, for `analyseQuery`. A new object after each compaction: ask again for each query. */
  get words(): WordsInUse {
    return this.#vocabulary;
  }

  get documentCount(): number {
    return this.#store.liveCount;
  }

  /** Distinct terms, those of removed documents included until the next compaction. */
  get wordCount(): number {
    return this.#vocabulary.size;
  }

  /** Bytes held by typed arrays, which is nearly all it takes. */
  get arrayBytes(): number {
    return this.#store.bytes + this.#vocabulary.byteLength + this.#postings.byteLength;
  }

  has(key: string): boolean {
    return this.#store.numberOf(key) !== undefined;
  }

  /** Adds a document, or puts it in the place of the one with its key. */
  add(document: SearchDocument): void {
    for (const name of Object.keys(document.fields)) {
      if (!this.shape.fields.some((field) => field.name === name)) {
        throw new SillbookError("unexpected", `The search index has no field "${name}".`);
      }
    }
    this.remove(document.key);
    const number = this.#store.add(document, this.#vocabulary);
    this.#enter(number);
  }

  /** Removes a document; false when there is none with that key. */
  remove(key: string): boolean {
    const number = this.#store.numberOf(key);
    if (number === undefined) {
      return false;
    }
    this.#knownSequences.clear();
    this.#countTerms(number, (term) => this.#vocabulary.changeFrequency(term, -1));
    this.#store.remove(number);
    const gone = this.#store.count - this.#store.liveCount;
    if (gone > compactFrom && gone > compactShare * this.#store.count && !this.#hold) {
      this.compact();
    }
    return true;
  }

  /** Adds many documents at once: the postings are laid out in one go afterwards, exactly as long as needed. */
  addAll(documents: Iterable<SearchDocument>): void {
    this.hold();
    try {
      for (const document of documents) {
        this.add(document);
      }
    } finally {
      this.release();
    }
  }

  /** Until `release` documents are only taken in, which is quicker: nothing that was added is found. */
  hold(): void {
    this.#hold = true;
  }

  release(): void {
    this.#hold = false;
    this.#layPostings();
  }

  /** Hits for an analysed query, grouped by kind, best first. */
  search(query: SearchQuery, options: SearchOptions): SearchResult {
    return rankDocuments(query, options, this.#parts(), this.#scorer, this.settings);
  }

  /** Drops what removed documents left behind. Happens by itself when a quarter is dead. */
  compact(): void {
    const old = this.#store;
    const oldVocabulary = this.#vocabulary;
    this.#store = new DocumentStore(this.shape);
    this.#vocabulary = new Vocabulary();
    for (let number = 0; number < old.count; number++) {
      if (old.isAlive(number)) {
        const copy = this.#store.addCopy(old, number, (term) =>
          this.#vocabulary.intern(oldVocabulary.termOf(term)),
        );
        this.#countTerms(copy, (term) => this.#vocabulary.changeFrequency(term, 1));
      }
    }
    this.#layPostings();
  }

  /**
   * The index as bytes, to be kept on disk. `note` is handed back by `fromSnapshot`: the caller writes there up to
   * which change the index has followed the records.
   */
  toSnapshot(note: string): Uint8Array<ArrayBuffer> {
    if (this.#store.count > this.#store.liveCount) {
      this.compact();
    }
    if (this.#postings.sizes.added > 0) {
      this.#layPostings();
    }
    return writeSnapshot({
      store: this.#store,
      vocabulary: this.#vocabulary,
      postings: this.#postings,
      note,
    });
  }

  /**
   * An index from `toSnapshot`'s bytes, or the reason why it has to be built from the records instead. It keeps the bytes.
   * `checksum`: of the bytes after the header, where the caller has it already.
   */
  static fromSnapshot(
    bytes: Uint8Array<ArrayBuffer>,
    shape: IndexShape,
    { settings = rankingSettings, checksum }: { settings?: RankingSettings; checksum?: number } = {},
  ): { readonly index: SearchIndex; readonly note: string } | { readonly refused: SnapshotRefusal } {
    const contents = readSnapshot(bytes, shape, checksum);
    if (typeof contents === "string") {
      return { refused: contents };
    }
    const index = new SearchIndex(shape, settings);
    index.#store = contents.store;
    index.#vocabulary = contents.vocabulary;
    index.#postings = contents.postings;
    return { index, note: contents.note };
  }

  #parts(): IndexParts {
    return {
      store: this.#store,
      vocabulary: this.#vocabulary,
      postings: this.#postings,
      knownSequences: this.#knownSequences,
    };
  }

  #enter(number: number): void {
    this.#knownSequences.clear();
    this.#countTerms(number, (term, counts) => {
      this.#vocabulary.changeFrequency(term, 1);
      if (!this.#hold) {
        this.#postings.append(term, number, counts);
      }
    });
    const { added, packed } = this.#postings.sizes;
    if (added > mostAdded && added > packed / 4) {
      this.#layPostings();
    }
  }

  #layPostings(): void {
    this.#knownSequences.clear();
    this.#store.trim();
    this.#vocabulary.trim();
    this.#vocabulary.prepare();
    this.#postings = Postings.laidOut(this.#vocabulary.size, (visit) => {
      for (let number = 0; number < this.#store.count; number++) {
        if (this.#store.isAlive(number)) {
          this.#countTerms(number, (term, counts) => visit(term, number, counts));
        }
      }
    });
  }

  /** Calls back once for each distinct term of a document with its packed counts. */
  #countTerms(number: number, visit: (term: number, counts: number) => void): void {
    if (this.#counts.length < this.#vocabulary.size) {
      this.#counts = new Int32Array(this.#vocabulary.size + 4096);
    }
    const entries = this.#store.entriesOf(number);
    let field = 0;
    for (const entry of entries) {
      if (entry & fieldFlag) {
        field = entry & termMask;
      } else {
        this.#counts[entry & termMask] = addOne(this.#counts[entry & termMask] as number, field);
      }
    }
    for (const entry of entries) {
      const term = entry & termMask;
      const counts = this.#counts[term] as number;
      if (!(entry & fieldFlag) && counts !== 0) {
        this.#counts[term] = 0;
        visit(term, counts);
      }
    }
  }
}
