import { describe, expect, it } from "vitest";
import { readingLength, synonymsOf } from "#shared-lib/search/synonyms.ts";
import { tradeWords } from "#shared-lib/search/trade-words.ts";

const readings = (words: string) => synonymsOf(words.split(" ")).map(({ words: other }) => other.join(" "));

describe("tradeWords", () => {
  it("has two readings or more in each group, all lower case and none twice", () => {
    for (const { readings: group } of tradeWords) {
      expect(group.length).toBeGreaterThan(1);
      expect(new Set(group).size, group.join()).toBe(group.length);
      for (const reading of group) {
        expect(reading).toBe(reading.toLowerCase().trim());
        expect(reading).not.toBe("");
      }
    }
  });

  it.each([
    ["lift", "elevator"],
    ["hall", "landing"],
    ["landing", "floor"],
    ["cabin", "car"],
    ["door zone", "unlocking zone"],
    ["callout", "breakdown"],
    ["callback", "callout"],
    ["reversed", "swapped"],
    ["wrong order", "crossed"],
    ["trapped", "stuck"],
    ["inop", "faulty"],
    ["not working", "unserviceable"],
    ["cwt", "counterweight"],
    ["colour", "color"],
    ["flr", "floor"],
    ["btn", "button"],
  ])("knows %s as %s, and the other way", (one, other) => {
    expect(readings(one)).toContain(other);
    expect(readings(other)).toContain(one);
  });

  it("knows the inflections of its words, and nothing of others", () => {
    expect(readings("swap")).toContain("crossed");
    expect(readings("leaks")).toContain("weeping");
    expect(readings("aerodrome")).toEqual([]);
    expect(readingLength(["door", "zone", "lost"], 0)).toBe(2);
    expect(readingLength(["aerodrome"], 0)).toBe(0);
  });

  it("never reads a bridge, which is one thing only in this program, as anything else", () => {
    expect(
      tradeWords.flatMap((group) => group.readings).filter((reading) => /bridg|jumper/.test(reading)),
    ).toEqual([]);
  });
});
