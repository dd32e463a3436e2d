import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { ByteReader, ByteWriter } from "#shared-lib/search/byte-file.ts";
import { Postings } from "#shared-lib/search/postings.ts";
import { StringTable } from "#shared-lib/search/string-table.ts";

const anyText = fc.oneof(
  fc.string(),
  fc.string({ unit: "binary" }),
  fc.constantFrom("", "a", "é", "двери", "\u0000"),
);

describe("string table", () => {
  it("gives each distinct string one number, and the string back", () => {
    fc.assert(
      fc.property(fc.array(anyText, { maxLength: 3000 }), fc.boolean(), (texts, stored) => {
        let table = new StringTable();
        const numbers = new Map<string, number>();
        for (const text of texts) {
          const expected = numbers.get(text) ?? numbers.size;
          expect(table.numberOf(text)).toBe(numbers.get(text));
          expect(table.intern(text)).toBe(expected);
          numbers.set(text, expected);
        }
        if (stored) {
          table.trim();
          const writer = new ByteWriter();
          table.write(writer);
          table = StringTable.read(new ByteReader(writer.finish(0), 0));
        }
        for (const [text, number] of numbers) {
          expect(table.textOf(number)).toBe(text);
          expect(table.numberOf(text)).toBe(number);
        }
        expect(table.size).toBe(numbers.size);
        expect(() => table.textOf(numbers.size)).toThrow(RangeError);
      }),
      { numRuns: 60 },
    );
  });
});

describe("postings", () => {
  const list = fc
    .uniqueArray(fc.nat(5_000_000), { maxLength: 60 })
    .map((documents) => documents.sort((one, other) => one - other));
  const counts = fc.integer();

  it("give back what was laid out and what was added, in order", () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(list, counts), { maxLength: 20 }), fc.nat(30), (terms, added) => {
        const postings = Postings.laidOut(terms.length, (visit) => {
          for (const [term, [documents, packed]] of terms.entries()) {
            for (const document of documents) visit(term, document, packed ^ document);
          }
        });
        const later = Array.from({ length: added }, (_, index) => 5_000_001 + index);
        for (const document of later) postings.append(terms.length, document, document);
        for (const [term, [documents, packed]] of terms.entries()) {
          const count = postings.read(term);
          expect([...postings.documents.subarray(0, count)]).toEqual(documents);
          expect([...postings.counts.subarray(0, count)]).toEqual(documents.map((one) => packed ^ one));
          expect(postings.countOf(term)).toBe(count);
        }
        const count = postings.read(terms.length);
        expect([...postings.documents.subarray(0, count)]).toEqual(later);
      }),
      { numRuns: 100 },
    );
  });
});
