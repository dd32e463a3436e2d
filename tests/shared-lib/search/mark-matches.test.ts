import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { analyseQuery } from "#shared-lib/search/analyse-query.ts";
import { explainHit } from "#shared-lib/search/explain-hit.ts";
import { sillbookIndexShape } from "#shared-lib/search/index-shape.ts";
import { Marker } from "#shared-lib/search/mark-matches.ts";
import { SearchIndex } from "#shared-lib/search/search-index.ts";
import { noteQuery, noteText } from "./note-arbitraries.ts";

function marked(text: string, asked: string): string[] {
  const index = new SearchIndex(sillbookIndexShape);
  index.add({ key: "1", kind: "callout", fields: { symptom: text } });
  return new Marker(analyseQuery(asked, index.words))
    .mark(text)
    .map(({ start, end }) => text.slice(start, end));
}

describe("marker", () => {
  it.each([
    ["The Türe klemmt", "ture", ["Türe"]],
    ["Elevator stuck", "lift", ["Elevator"]],
    ["doors reopening, door dead", "door reopens", ["doors", "reopening", "door"]],
    ["signals in the wrong order, order of ropes", "signals swapped", ["signals", "wrong order"]],
    ["it stops 20 mm low", "2 cm", ["20 mm"]],
    ["at the 3rd flr again", "floor 3", ["3rd flr"]],
    ["read X4:12 and X5:12", "x4:12", ["X4:12", "12"]],
    ["govenor is not governor", "governor", ["governor"]],
    ["nothing here", "brake", []],
  ])("marks in %j for %j", (text, asked, expected) => {
    expect(marked(text, asked)).toEqual(expected);
  });

  it("gives ranges in order that never overlap", () => {
    fc.assert(
      fc.property(noteText, noteQuery, (text, asked) => {
        const index = new SearchIndex(sillbookIndexShape);
        index.add({ key: "1", kind: "callout", fields: { symptom: text } });
        const query = analyseQuery(asked, index.words);
        const ranges = new Marker(query).mark(text);
        let last = 0;
        for (const { start, end } of ranges) {
          expect(start).toBeGreaterThanOrEqual(last);
          expect(end).toBeGreaterThan(start);
          last = end;
        }
        // A document is found exactly when something in it can be marked.
        expect(ranges.length > 0).toBe(index.search(query, { limitPerKind: 1 }).groups.length > 0);
      }),
      { numRuns: 500 },
    );
  });
});

describe("explainHit", () => {
  it("names what was answered, by what, where, and what was not", () => {
    const index = new SearchIndex(sillbookIndexShape);
    index.add({
      key: "1",
      kind: "faultNote",
      fields: { title: "Zone sensors swapped", symptom: "stops short; sensors in wrong order" },
      attributes: { controllerFamily: "Tern" },
    });
    const query = analyseQuery("sensor crossed smell", index.words);
    const boosts = [{ attribute: "controllerFamily", anyOf: ["Tern"], factor: 1.2 }];
    const hit = index.search(query, { limitPerKind: 1, boosts }).groups[0]?.hits[0];
    expect(hit && explainHit(hit, query)).toEqual({
      answered: [
        { asked: "sensor", found: ["sensors"], fields: ["title", "symptom"], reading: "inflection" },
        { asked: "crossed", found: ["swapped"], fields: ["title", "symptom"], reading: "synonym" },
      ],
      unanswered: ["smell"],
      fields: ["title", "symptom"],
      raisedFor: ["controllerFamily"],
    });
  });
});
