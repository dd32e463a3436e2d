import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { analyseQuery } from "#shared-lib/search/analyse-query.ts";
import { analyseText } from "#shared-lib/search/analyse-text.ts";
import { checksumOf } from "#shared-lib/search/byte-file.ts";
import { sillbookIndexShape } from "#shared-lib/search/index-shape.ts";
import { snapshotVersion } from "#shared-lib/search/index-snapshot.ts";
import { SearchIndex } from "#shared-lib/search/search-index.ts";
import { noteDocument, noteQuery } from "./note-arbitraries.ts";

function search(index: SearchIndex, text: string) {
  return index.search(analyseQuery(text, index.words), {
    limitPerKind: 20,
    filters: { drive: { anyOf: ["geared"] } },
  });
}

function restored(bytes: Uint8Array<ArrayBuffer>): { index: SearchIndex; note: string } {
  const result = SearchIndex.fromSnapshot(bytes, sillbookIndexShape);
  if ("refused" in result) {
    throw new Error(result.refused);
  }
  return result;
}

function filled(): SearchIndex {
  const index = new SearchIndex(sillbookIndexShape);
  index.addAll([
    {
      key: "a",
      kind: "callout",
      fields: { symptom: "двери stuck at floor 3" },
      attributes: { drive: "geared" },
      date: 5,
    },
    {
      key: "b",
      kind: "lift",
      fields: { title: "Kittiwake House, lift 2" },
      attributes: { lift: ["1", "2"] },
    },
  ]);
  return index;
}

describe("snapshot of the search index", () => {
  it("comes back the same, and goes on being changed the same way", () => {
    fc.assert(
      fc.property(fc.array(noteDocument), fc.array(noteDocument), noteQuery, (before, after, query) => {
        const index = new SearchIndex(sillbookIndexShape);
        for (const document of before) {
          index.add(document);
        }
        const { index: copy, note } = restored(index.toSnapshot("change 17"));
        expect(note).toBe("change 17");
        expect(copy.documentCount).toBe(index.documentCount);
        expect(search(copy, query)).toEqual(search(index, query));
        for (const document of after) {
          index.add(document);
          copy.add(document);
          copy.remove("note-0");
          index.remove("note-0");
        }
        expect(search(copy, query)).toEqual(search(index, query));
      }),
      { numRuns: 200 },
    );
  });

  it("keeps words of every script, several values and missing dates", () => {
    const { index } = restored(filled().toSnapshot("ключ"));
    expect(search(index, "двери").groups[0]?.hits[0]?.date).toBe(5);
    const lift = index.search(analyseQuery("kittiwake", index.words), {
      limitPerKind: 5,
      filters: { lift: { anyOf: ["2"] } },
    });
    expect(lift.groups[0]?.hits[0]).toMatchObject({ key: "b", kind: "lift" });
    expect(lift.groups[0]?.hits[0]).not.toHaveProperty("date");
  });

  it("reads bytes that do not begin on a border", () => {
    const bytes = filled().toSnapshot("");
    const shifted = new Uint8Array(bytes.length + 3);
    shifted.set(bytes, 3);
    expect(restored(shifted.subarray(3)).index.documentCount).toBe(2);
  });

  it("is refused when any byte differs or the end is missing", () => {
    const bytes = filled().toSnapshot("note");
    for (let at = 0; at < bytes.length; at++) {
      const damaged = bytes.slice();
      damaged[at] = (damaged[at] as number) ^ (1 << (at % 8));
      expect(SearchIndex.fromSnapshot(damaged, sillbookIndexShape), `byte ${at}`).toHaveProperty("refused");
    }
    for (const length of [0, 7, 16, bytes.length - 8, bytes.length - 1]) {
      expect(SearchIndex.fromSnapshot(bytes.subarray(0, length), sillbookIndexShape)).toEqual({
        refused: "damaged",
      });
    }
  });

  it("is refused from another version or for other fields, not for other weights", () => {
    const bytes = filled().toSnapshot("note");
    const older = bytes.slice();
    new Uint32Array(older.buffer)[1] = snapshotVersion - 1;
    expect(SearchIndex.fromSnapshot(older, sillbookIndexShape)).toEqual({ refused: "other-version" });
    const fewer = { ...sillbookIndexShape, fields: sillbookIndexShape.fields.slice(1) };
    expect(SearchIndex.fromSnapshot(bytes, fewer)).toEqual({ refused: "other-shape" });
    const heavier = {
      ...sillbookIndexShape,
      fields: sillbookIndexShape.fields.map((field) => ({ ...field, weight: 3 })),
    };
    expect(SearchIndex.fromSnapshot(bytes, heavier)).toHaveProperty("index");
  });

  it("has a version that is raised with the analysis: stored words must be read as they were written", () => {
    const sample =
      "Türe E42 X4:12 u/s doesn't 20mm 20 mm 1,100 kg 3rd flr, third landing, двери ½ door-zone 0.5 m/s v1.2";
    const readings = JSON.stringify(
      analyseText(sample).map(({ term, position, extra }) => [term, position, extra]),
    );
    const print = checksumOf(
      new Uint8Array(Uint16Array.from(readings, (letter) => letter.charCodeAt(0)).buffer),
    );
    // If this fails: raise `snapshotVersion`, then write the new pair here.
    expect([snapshotVersion, print]).toEqual([2, 3106135216]);
  });

  it("uses the checksum of zip and png", () => {
    expect(checksumOf(Uint8Array.from("123456789", (letter) => letter.charCodeAt(0)))).toBe(0xcbf43926);
  });
});
