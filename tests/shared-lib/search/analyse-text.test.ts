import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { analyseText } from "#shared-lib/search/analyse-text.ts";

const terms = (text: string) => analyseText(text).map((token) => token.term);

describe("analyseText", () => {
  it("folds case and accents and keeps where each word stood", () => {
    expect(analyseText("Türe: KLEMMT")).toEqual([
      { term: "ture", start: 0, end: 4, position: 0, extra: false },
      { term: "klemmt", start: 6, end: 12, position: 1, extra: false },
    ]);
    expect(terms("Straße Ølpumpe")).toEqual(["strasse", "olpumpe"]);
  });

  it.each(["20mm", "20 mm", "20 millimetres", "2 cm", "0.02 m", "0,02 m", "20MM"])(
    "reads %s as the same measure",
    (text) => {
      expect(terms(`about ${text} low`)).toContain("20mm");
    },
  );

  it("keeps measures of different kinds and sizes apart", () => {
    expect(terms("20 kg")).not.toContain("20mm");
    expect(terms("200 mm")).not.toContain("20mm");
    expect(terms("1,100 mm")).toContain("1100mm");
  });

  it.each(["3rd flr", "floor 3", "third floor", "Landing 3", "3rd landing", "level 3"])(
    "reads %s as landing 3",
    (text) => {
      expect(terms(`stops at ${text} again`)).toContain("floor:3");
    },
  );

  it("keeps terminal markings and display readings whole and in parts", () => {
    expect(terms("X4:12")).toEqual(expect.arrayContaining(["x4:12", "x4", "12"]));
    expect(terms("E42")).toEqual(expect.arrayContaining(["e42", "42"]));
    expect(terms("E-42")).toContain("e42");
    expect(analyseText("see X4:12 now").find((token) => token.term === "x4:12")).toMatchObject({
      start: 4,
      end: 9,
    });
  });

  it("joins words over an apostrophe and takes them apart at a hyphen", () => {
    expect(terms("doesn't car's door-zone u/s")).toEqual(["doesnt", "car", "door", "zone", "u/s"]);
  });

  it("reads other scripts by letters and gives nothing for punctuation alone", () => {
    expect(terms("двери не закрываются")).toEqual(["двери", "не", "закрываются"]);
    expect(terms("लिफ्ट बंद")).toEqual(["लिफ्ट", "बंद"]);
    expect(terms("?!... --- \u{1f6d7} ()\"'")).toEqual([]);
    expect(terms("")).toEqual([]);
  });

  it("never fails, and offsets always lie in the text and in order of position", () => {
    fc.assert(
      fc.property(fc.string({ unit: "grapheme", maxLength: 80 }), (text) => {
        let position = -1;
        for (const token of analyseText(text)) {
          expect(token.term).not.toBe("");
          expect(token.start).toBeLessThan(token.end);
          expect(token.end).toBeLessThanOrEqual(text.length);
          expect(token.position).toBe(token.extra ? position : position + 1);
          position = token.position;
        }
      }),
      { numRuns: 2000 },
    );
  });

  it("gives the same words for a text typed in capitals", () => {
    const words = fc.array(fc.constantFrom("door", "X4:12", "20 mm", "3rd flr", "überfahrt", "E42"), {
      maxLength: 6,
    });
    fc.assert(
      fc.property(words, (parts) => {
        expect(terms(parts.join(" ").toUpperCase())).toEqual(terms(parts.join(" ")));
      }),
    );
  });
});
