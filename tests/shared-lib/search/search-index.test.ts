import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { analyseQuery } from "#shared-lib/search/analyse-query.ts";
import { type SearchDocument, sillbookIndexShape } from "#shared-lib/search/index-shape.ts";
import { rankingSettings } from "#shared-lib/search/ranking-settings.ts";
import { SearchIndex } from "#shared-lib/search/search-index.ts";
import { noteDocument, noteQuery } from "./note-arbitraries.ts";
import { plainSearch } from "./plain-search.ts";

function indexOf(documents: readonly SearchDocument[]): SearchIndex {
  const index = new SearchIndex(sillbookIndexShape);
  index.addAll(documents);
  return index;
}

function find(index: SearchIndex, text: string, limitPerKind = 20) {
  return index.search(analyseQuery(text, index.words), { limitPerKind });
}

const callout = (key: string, symptom: string, rest: Partial<SearchDocument> = {}): SearchDocument => ({
  key,
  kind: "callout",
  fields: { symptom },
  ...rest,
});

const keysOf = (result: ReturnType<typeof find>) =>
  result.groups.flatMap((group) => group.hits.map((hit) => hit.key));

describe("SearchIndex", () => {
  it("equals one built anew after any adding, replacing and removing", () => {
    const step = fc.oneof(
      fc.record({ add: noteDocument }),
      fc.record({ remove: fc.integer({ min: 0, max: 11 }).map((number) => `note-${number}`) }),
      fc.constant({ compact: true } as const),
    );
    fc.assert(
      fc.property(
        fc.array(step, { maxLength: 40 }),
        fc.array(noteQuery, { minLength: 1, maxLength: 4 }),
        (steps, queries) => {
          const index = new SearchIndex(sillbookIndexShape);
          const documents = new Map<string, SearchDocument>();
          for (const action of steps) {
            if ("add" in action) {
              index.add(action.add);
              documents.set(action.add.key, action.add);
            } else if ("remove" in action) {
              expect(index.remove(action.remove)).toBe(documents.delete(action.remove));
            } else {
              index.compact();
            }
          }
          const rebuilt = indexOf([...documents.values()].reverse());
          expect(index.documentCount).toBe(documents.size);
          for (const query of queries) {
            expect(find(index, query)).toEqual(find(rebuilt, query));
          }
        },
      ),
      { numRuns: 400 },
    );
  });

  it("ranks as BM25F by its definition does", () => {
    // Nearness counts from five words on, so that the short texts of this test have it.
    const settings = { ...rankingSettings, nearnessFrom: 5 };
    const documents = fc.uniqueArray(noteDocument, {
      minLength: 1,
      maxLength: 12,
      selector: ({ key }) => key,
    });
    let compared = 0;
    fc.assert(
      fc.property(documents, noteQuery, (notes, text) => {
        const sameKind = notes.map((note) => ({ ...note, kind: "callout", date: 1 }));
        const index = new SearchIndex(sillbookIndexShape, settings);
        index.addAll(sameKind);
        const query = analyseQuery(text, index.words);
        const hits = index.search(query, { limitPerKind: 20 }).groups[0]?.hits ?? [];
        const plain = plainSearch(sameKind, query, sillbookIndexShape, settings);
        expect(hits.length).toBe(plain.length);
        const plainScores = new Map(plain.map(({ key, score }) => [key, score]));
        for (const [at, hit] of hits.entries()) {
          expect(hit.score).toBeCloseTo(plainScores.get(hit.key) ?? Number.NaN, 9);
          expect(hit.score).toBeCloseTo(plain[at]?.score ?? Number.NaN, 9);
          compared++;
        }
      }),
      { numRuns: 600 },
    );
    expect(compared).toBeGreaterThan(500);
  });

  it("compacts by itself and still finds everything", () => {
    const index = new SearchIndex(sillbookIndexShape);
    const count = 3000;
    for (let number = 0; number < count; number++) {
      index.add(callout(`c${number}`, `brake noise case${number}`));
    }
    for (let number = 0; number < count; number += 2) {
      index.remove(`c${number}`);
    }
    expect(index.documentCount).toBe(count / 2);
    expect(keysOf(find(index, "case2999"))).toEqual(["c2999"]);
    expect(keysOf(find(index, "case2998"))).not.toContain("c2998");
    expect(find(index, "brake").groups[0]?.total).toBe(count / 2);
    // Each note brings two words of its own; without compaction all 6,000 would still be there.
    expect(index.wordCount).toBeLessThan(1.5 * count);
  });

  it("gives equal scores newest first, then by key, whatever the order of adding", () => {
    const notes = [
      callout("b", "lamp out", { date: 5 }),
      callout("a", "lamp out", { date: 5 }),
      callout("c", "lamp out", { date: 9 }),
      callout("d", "lamp out"),
    ];
    expect(keysOf(find(indexOf(notes), "lamp"))).toEqual(["c", "a", "b", "d"]);
    expect(keysOf(find(indexOf([...notes].reverse()), "lamp"))).toEqual(["c", "a", "b", "d"]);
  });

  it("filters by kind, attribute, several values, unset attribute, date and key", () => {
    const index = indexOf([
      callout("tern", "door dead", { attributes: { controllerFamily: "Tern" }, date: 100 }),
      callout("both", "door dead", { attributes: { controllerFamily: ["Tern", "Petrel"] }, date: 200 }),
      callout("any", "door dead", { date: 300 }),
      {
        key: "note",
        kind: "faultNote",
        fields: { title: "door dead" },
        attributes: { controllerFamily: "Dunlin" },
      },
    ]);
    const query = analyseQuery("door", index.words);
    const keys = (options: object) => keysOf(index.search(query, { limitPerKind: 10, ...options })).sort();
    expect(keys({ kinds: ["faultNote"] })).toEqual(["note"]);
    expect(keys({ filters: { controllerFamily: { anyOf: ["Petrel"] } } })).toEqual(["both"]);
    expect(keys({ filters: { controllerFamily: { anyOf: ["Petrel"], orUnset: true } } })).toEqual([
      "any",
      "both",
    ]);
    expect(keys({ filters: { controllerFamily: { anyOf: ["Heron"] } } })).toEqual([]);
    expect(keys({ dates: { from: 200, to: 250 } })).toEqual(["both"]);
    expect(keys({ without: ["tern", "nowhere"] })).toEqual(["any", "both", "note"]);
  });

  it("raises what a boost names and says so", () => {
    const index = indexOf([
      callout("1", "door reopens", { attributes: { lift: "A" } }),
      callout("2", "door reopens", { attributes: { lift: "B" } }),
    ]);
    const query = analyseQuery("door reopens", index.words);
    const [group] = index.search(query, {
      limitPerKind: 5,
      boosts: [{ attribute: "lift", anyOf: ["B"], factor: 1.5 }],
    }).groups;
    expect(group?.hits.map((hit) => [hit.key, hit.boostedBy])).toEqual([
      ["2", ["lift"]],
      ["1", []],
    ]);
    const own = index.search(query, { limitPerKind: 5, multiplier: (key) => (key === "2" ? 3 : 1) });
    expect(keysOf(own)).toEqual(["2", "1"]);
  });

  it("groups by kind with totals and honours the limit", () => {
    const index = indexOf([
      ...Array.from({ length: 7 }, (_, number) => callout(`c${number}`, "levelling fault")),
      { key: "n", kind: "faultNote", fields: { title: "Levelling fault", symptom: "levelling" } },
    ]);
    const result = find(index, "levelling", 3);
    const shown = result.groups.map(({ kind, total, hits }) => [kind, total, hits.length]);
    expect(shown).toContainEqual(["callout", 7, 3]);
    expect(shown).toContainEqual(["faultNote", 1, 1]);
  });

  it("says which query term was found in which field by which word", () => {
    const index = indexOf([
      { key: "n", kind: "faultNote", fields: { title: "Zone sensors crossed", cause: "elevator rewired" } },
    ]);
    const hit = find(index, "lift sensor swapped").groups[0]?.hits[0];
    expect(hit?.matches).toEqual([
      { queryTerm: 0, fields: ["cause"], words: ["elevator"], reading: "synonym" },
      { queryTerm: 1, fields: ["title"], words: ["sensors"], reading: "inflection" },
      { queryTerm: 2, fields: ["title"], words: ["crossed"], reading: "synonym" },
    ]);
  });

  it("refuses a field it does not have, and a shape with more than eight", () => {
    const index = new SearchIndex(sillbookIndexShape);
    expect(() => index.add({ key: "1", kind: "x", fields: { smell: "burnt" } })).toThrow(/no field "smell"/);
    const field = { name: "f", weight: 1 };
    expect(() => new SearchIndex({ fields: Array(9).fill(field), attributes: [] })).toThrow(/eight/);
  });
});
