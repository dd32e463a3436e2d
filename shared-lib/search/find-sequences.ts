import type { DocumentStore } from "./document-store.ts";
import { extraFlag, fieldFlag, termMask } from "./document-store.ts";
import type { Postings } from "./postings.ts";
import type { Vocabulary } from "./vocabulary.ts";

/** A sequence with its terms as numbers: place by place the terms that fill it. */
export type NumberedSequence = readonly ReadonlySet<number>[];

/** Documents with packed counts as in `PostingPool`. */
export interface SequencePostings {
  readonly documents: readonly number[];
  readonly counts: readonly number[];
}

/** The term numbers of a sequence, or undefined when some place has no term in use. */
export function numberSequence(
  sequence: readonly (readonly string[])[],
  vocabulary: Vocabulary,
): NumberedSequence | undefined {
  const places = sequence.map(
    (terms) =>
      new Set(
        terms
          .map((term) => vocabulary.numberOf(term))
          .filter((number) => number !== undefined && vocabulary.frequencyOf(number) > 0) as number[],
      ),
  );
  return places.every((place) => place.size > 0) ? places : undefined;
}

/** Live documents in which the places of a sequence stand side by side in one field. */
export function findSequences(
  sequence: NumberedSequence,
  store: DocumentStore,
  postings: Postings,
): SequencePostings {
  const documents: number[] = [];
  const counts: number[] = [];
  for (const document of documentsWithAll(sequence, store.count, postings)) {
    const packed = store.isAlive(document) ? countSequence(sequence, store, document) : 0;
    if (packed !== 0) {
      documents.push(document);
      counts.push(packed);
    }
  }
  return { documents, counts };
}

/** Documents that hold some term of every place, in whatever order; found from the rarest place on. */
function documentsWithAll(sequence: NumberedSequence, documentCount: number, postings: Postings): number[] {
  const cost = (place: ReadonlySet<number>) =>
    [...place].reduce((sum, term) => sum + postings.countOf(term), 0);
  const places = [...sequence].sort((one, other) => cost(one) - cost(other));
  const placesFilled = new Uint8Array(documentCount);
  let documents: number[] = [];
  for (const [step, place] of places.entries()) {
    documents = [];
    for (const term of place) {
      const count = postings.read(term);
      for (let index = 0; index < count; index++) {
        const document = postings.documents[index] as number;
        if (placesFilled[document] === step) {
          placesFilled[document] = step + 1;
          documents.push(document);
        }
      }
    }
  }
  return documents;
}

/** How often a sequence stands in each field of a document, packed as in `PostingPool`. */
export function countSequence(sequence: NumberedSequence, store: DocumentStore, document: number): number {
  const entries = store.entriesOf(document);
  let packed = 0;
  let field = 0;
  for (const [at, entry] of entries.entries()) {
    if (entry & fieldFlag) {
      field = entry & termMask;
    } else if (!(entry & extraFlag) && standsAt(sequence, entries, at)) {
      packed = addOne(packed, field);
    }
  }
  return packed;
}

/** `counts` with one more in a field, stopping at 15. */
export function addOne(counts: number, field: number): number {
  const shift = 4 * field;
  return ((counts >>> shift) & 15) === 15 ? counts : (counts + (1 << shift)) | 0;
}

function standsAt(sequence: NumberedSequence, entries: Int32Array, from: number): boolean {
  const end = entries.length;
  let at = from;
  for (const place of sequence) {
    if (at >= end || (entries[at] as number) & fieldFlag) {
      return false;
    }
    let filled = place.has((entries[at] as number) & termMask);
    for (at++; at < end && (entries[at] as number) & extraFlag; at++) {
      filled ||= place.has((entries[at] as number) & termMask);
    }
    if (!filled) {
      return false;
    }
  }
  return true;
}
