import { describe, expect, it } from "vitest";
import { stemWord } from "#shared-lib/search/stem-word.ts";

// From the examples in Porter 1980, run through all steps.
const published: readonly (readonly [string, string])[] = [
  ["caresses", "caress"],
  ["ponies", "poni"],
  ["cats", "cat"],
  ["agreed", "agre"],
  ["plastered", "plaster"],
  ["motoring", "motor"],
  ["conflated", "conflat"],
  ["troubled", "troubl"],
  ["sized", "size"],
  ["hopping", "hop"],
  ["falling", "fall"],
  ["hissing", "hiss"],
  ["filing", "file"],
  ["happy", "happi"],
  ["relational", "relat"],
  ["conditional", "condit"],
  ["vietnamization", "vietnam"],
  ["operator", "oper"],
  ["hopefulness", "hope"],
  ["formality", "formal"],
  ["sensitivity", "sensit"],
  ["triplicate", "triplic"],
  ["electrical", "electr"],
  ["goodness", "good"],
  ["revival", "reviv"],
  ["adjustable", "adjust"],
  ["replacement", "replac"],
  ["adoption", "adopt"],
  ["probate", "probat"],
  ["controlling", "control"],
  ["rolling", "roll"],
  ["generalizations", "gener"],
  ["oscillators", "oscil"],
];

describe("stemWord", () => {
  it.each(published)("takes %s to %s, as published", (word, stem) => {
    expect(stemWord(word)).toBe(stem);
  });

  it("leaves markings, short words and other scripts alone", () => {
    for (const word of ["x4:12", "e42", "20mm", "gas", "двери", "türen"]) {
      expect(stemWord(word)).toBe(word);
    }
  });

  it("brings the forms of a trade word together", () => {
    for (const forms of [
      ["leak", "leaks", "leaking", "leaked"],
      ["level", "levels", "levelling", "levelled", "leveling"],
      ["stop", "stops", "stopped", "stopping"],
      ["reverse", "reversed", "reversing"],
    ]) {
      expect(new Set(forms.map(stemWord)).size, forms.join()).toBe(1);
    }
  });
});
