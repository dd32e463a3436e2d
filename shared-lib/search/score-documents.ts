import type { DocumentStore } from "./document-store.ts";
import {
  findSequences,
  type NumberedSequence,
  numberSequence,
  type SequencePostings,
} from "./find-sequences.ts";
import type { Postings } from "./postings.ts";
import { lengthShareOf, type RankingSettings } from "./ranking-settings.ts";
import { isOwnForm, type QueryTerm, type SearchQuery } from "./search-query.ts";
import type { Vocabulary } from "./vocabulary.ts";

/** The parts of an index that ranking reads. */
export interface IndexParts {
  readonly store: DocumentStore;
  readonly vocabulary: Vocabulary;
  readonly postings: Postings;
  /** Phrases already looked for since the index last changed, by their term numbers. */
  readonly knownSequences: Map<string, SequencePostings>;
}

const mostKnownSequences = 500;
/** Fields of fewer words have the worth of an occurrence in a table; longer ones are rare. */
const tabled = 256;

/** Scores of all documents that hold any term of a query. The arrays are used again by the next query. */
export interface Scores {
  /** By document number; only the entries named by `touched` have a meaning. */
  readonly totals: Float64Array;
  readonly touched: Int32Array;
  readonly touchedCount: number;
  /** Worth of each query term: its weight times its rarity. */
  readonly worths: readonly number[];
}

/**
 * Scores every live document against a query: BM25F (Robertson, Zaragoza and Taylor 2004) in which a query term and
 * all that stands in for it are one word, its occurrences counted by their weights. So a synonym never counts twice
 * beside the word itself. Rarity is that of the word in its own forms: that others say it differently does not make
 * it a common word. Only where no document has it in its own form is rarity that of everything found for it.
 */
export class DocumentScorer {
  #totals = new Float64Array(0);
  #frequencies = new Float64Array(0);
  #touched = new Int32Array(0);
  #termTouched = new Int32Array(0);
  #touchedCount = 0;
  #termTouchedCount = 0;
  /** Worth of one occurrence by field and length of the field: `field * tabled + length`. */
  #worthOfOne = new Float64Array(0);
  #shares: { weight: Float64Array; base: Float64Array; slope: Float64Array } = shareArrays(0);

  score(query: SearchQuery, parts: IndexParts, settings: RankingSettings): Scores {
    this.#clear(parts.store.count);
    this.#prepareFields(parts.store, settings);
    const worths = query.terms.map((term) => this.#scoreTerm(term, parts, settings));
    return { totals: this.#totals, touched: this.#touched, touchedCount: this.#touchedCount, worths };
  }

  #clear(documents: number): void {
    if (this.#totals.length < documents) {
      const room = documents + (documents >> 2) + 16;
      this.#totals = new Float64Array(room);
      this.#frequencies = new Float64Array(room);
      this.#touched = new Int32Array(room);
      this.#termTouched = new Int32Array(room);
    }
    for (let index = 0; index < this.#touchedCount; index++) {
      this.#totals[this.#touched[index] as number] = 0;
    }
    this.#touchedCount = 0;
  }

  #prepareFields(store: DocumentStore, settings: RankingSettings): void {
    const { fields } = store.shape;
    this.#shares = shareArrays(fields.length);
    for (const [field, { weight }] of fields.entries()) {
      const lengthShare = lengthShareOf(store.averageLength(field), settings);
      this.#shares.weight[field] = weight;
      this.#shares.base[field] = 1 - lengthShare;
      this.#shares.slope[field] = lengthShare / store.averageLength(field);
    }
    this.#worthOfOne = Float64Array.from({ length: fields.length * tabled }, (_, at) =>
      this.#workOutWorth(Math.floor(at / tabled), at % tabled),
    );
  }

  #workOutWorth(field: number, length: number): number {
    const { weight, base, slope } = this.#shares;
    return (weight[field] as number) / ((base[field] as number) + (slope[field] as number) * length);
  }

  #scoreTerm(term: QueryTerm, parts: IndexParts, settings: RankingSettings): number {
    this.#termTouchedCount = 0;
    const weights = new Map<number, number>();
    const ownForms = new Set<number>();
    for (const { sequence, weight, reading } of term.alternatives) {
      if (weight <= 0) {
        continue;
      }
      const only = sequence.length === 1 ? sequence[0] : undefined;
      for (const word of only ?? []) {
        const number = parts.vocabulary.numberOf(word);
        if (number !== undefined) {
          weights.set(number, Math.max(weight, weights.get(number) ?? 0));
          if (isOwnForm(reading)) {
            ownForms.add(number);
          }
        }
      }
      const numbered = only ? undefined : numberSequence(sequence, parts.vocabulary);
      if (numbered) {
        const { documents, counts } = knownOrFound(numbered, parts);
        for (const [index, document] of documents.entries()) {
          this.#count(document, counts[index] as number, weight, parts.store);
        }
      }
    }
    for (const [number, weight] of weights) {
      this.#countPostings(number, weight, parts);
    }
    let own = 0;
    for (const number of ownForms) {
      own += parts.vocabulary.frequencyOf(number);
    }
    return this.#addTerm(term.weight, own, parts.store.liveCount, settings);
  }

  #countPostings(number: number, weight: number, { postings, store }: IndexParts): void {
    const found = postings.read(number);
    const { documents, counts } = postings;
    for (let index = 0; index < found; index++) {
      const document = documents[index] as number;
      if (store.isAlive(document)) {
        this.#count(document, counts[index] as number, weight, store);
      }
    }
  }

  #count(document: number, counts: number, weight: number, store: DocumentStore): void {
    const { lengths } = store;
    const worthOfOne = this.#worthOfOne;
    const firstLength = document * store.shape.fields.length;
    let sum = 0;
    let rest = counts;
    while (rest !== 0) {
      // The lowest field with any occurrence: four bits a field.
      const field = (31 - Math.clz32(rest & -rest)) >>> 2;
      const length = lengths[firstLength + field] as number;
      const worth =
        length < tabled ? (worthOfOne[field * tabled + length] as number) : this.#workOutWorth(field, length);
      sum += worth * ((rest >>> (4 * field)) & 15);
      rest &= ~(15 << (4 * field));
    }
    if (this.#frequencies[document] === 0) {
      this.#termTouched[this.#termTouchedCount++] = document;
    }
    this.#frequencies[document] = (this.#frequencies[document] as number) + weight * sum;
  }

  #addTerm(weight: number, own: number, liveCount: number, settings: RankingSettings): number {
    const found = this.#termTouchedCount;
    const frequent = own === 0 ? found : Math.min(own, found);
    const worth = weight * Math.log(1 + (liveCount - frequent + 0.5) / (frequent + 0.5));
    for (let index = 0; index < found; index++) {
      const document = this.#termTouched[index] as number;
      const frequency = this.#frequencies[document] as number;
      this.#frequencies[document] = 0;
      if (this.#totals[document] === 0) {
        this.#touched[this.#touchedCount++] = document;
      }
      const gain = (worth * frequency * (settings.saturation + 1)) / (frequency + settings.saturation);
      this.#totals[document] = (this.#totals[document] as number) + gain;
    }
    return worth;
  }
}

function knownOrFound(sequence: NumberedSequence, parts: IndexParts): SequencePostings {
  const name = sequence.map((place) => [...place].join(",")).join(" ");
  let found = parts.knownSequences.get(name);
  if (!found) {
    found = findSequences(sequence, parts.store, parts.postings);
    if (parts.knownSequences.size < mostKnownSequences) {
      parts.knownSequences.set(name, found);
    }
  }
  return found;
}

function shareArrays(fields: number): { weight: Float64Array; base: Float64Array; slope: Float64Array } {
  return {
    weight: new Float64Array(fields),
    base: new Float64Array(fields),
    slope: new Float64Array(fields),
  };
}
