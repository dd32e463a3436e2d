import { AttributeColumn } from "./attribute-column.ts";
import { ByteReader, ByteWriter, checksumOf } from "./byte-file.ts";
import { DocumentStore } from "./document-store.ts";
import type { IndexShape } from "./index-shape.ts";
import { Postings } from "./postings.ts";
import { Vocabulary } from "./vocabulary.ts";

/** Raise it when the analysis or this layout changes: older snapshots are then refused and the index is built anew. */
export const snapshotVersion = 2;

const mark = 0x5b5e_a4c8;
/** Bytes before those that the checksum covers. */
export const snapshotHeaderLength = 16;

interface Head {
  readonly shape: IndexShape;
  readonly note: string;
  readonly combinations: readonly (readonly (readonly string[])[])[];
}

export interface SnapshotContents {
  readonly store: DocumentStore;
  readonly vocabulary: Vocabulary;
  readonly postings: Postings;
  readonly note: string;
}

/** Why a snapshot cannot be used; each time the index is built from the records instead. */
export type SnapshotRefusal = "damaged" | "other-version" | "other-shape";

/** The documents, words and postings of an index as bytes: header (mark, version, length, CRC-32), then the arrays. */
export function writeSnapshot({
  store,
  vocabulary,
  postings,
  note,
}: SnapshotContents): Uint8Array<ArrayBuffer> {
  const columns = [store.kinds, ...store.columns.values()];
  const head: Head = { shape: store.shape, note, combinations: columns.map((column) => column.combinations) };
  const writer = new ByteWriter();
  writer.text(JSON.stringify(head));
  vocabulary.write(writer);
  postings.write(writer);
  store.write(writer);
  for (const column of columns) {
    writer.bytes(column.cells(store.count));
  }
  const bytes = writer.finish(snapshotHeaderLength);
  const header = new Uint32Array(bytes.buffer, 0, 4);
  header.set([mark, snapshotVersion, bytes.length, checksumOf(bytes.subarray(snapshotHeaderLength))]);
  return bytes;
}

/**
 * Reads what `writeSnapshot` made. Refuses, without throwing, whatever is not whole, or not for this shape.
 * `checksum`: CRC-32 of what follows the header, where the caller has it already.
 */
export function readSnapshot(
  bytes: Uint8Array<ArrayBuffer>,
  shape: IndexShape,
  checksum = checksumOf(bytes.subarray(snapshotHeaderLength)),
): SnapshotContents | SnapshotRefusal {
  if (bytes.length < snapshotHeaderLength) {
    return "damaged";
  }
  const header = new Uint32Array(new Uint8Array(bytes.subarray(0, snapshotHeaderLength)).buffer);
  if (header[0] !== mark) {
    return "damaged";
  }
  if (header[1] !== snapshotVersion) {
    return "other-version";
  }
  if (header[2] !== bytes.length || header[3] !== checksum) {
    return "damaged";
  }
  const reader = new ByteReader(bytes, snapshotHeaderLength);
  const head = JSON.parse(reader.text()) as Head;
  if (JSON.stringify(namesOf(head.shape)) !== JSON.stringify(namesOf(shape))) {
    return "other-shape";
  }
  const vocabulary = Vocabulary.read(reader);
  const postings = Postings.read(reader);
  const store = DocumentStore.read(shape, reader, (index) =>
    AttributeColumn.restore(head.combinations[index] ?? [], reader.int32()),
  );
  return { store, vocabulary, postings, note: head.note };
}

/** Weights may change between two starts; which fields and attributes there are may not. */
function namesOf(shape: IndexShape): readonly string[][] {
  return [shape.fields.map((field) => field.name), [...shape.attributes]];
}
