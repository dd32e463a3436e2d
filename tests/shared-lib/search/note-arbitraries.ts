import fc from "fast-check";
import type { SearchDocument } from "#shared-lib/search/index-shape.ts";

const words =
  "door doors reopening reopens lift elevator floor 3 3rd landing swapped crossed wrong order not working dead brake " +
  "braking 20 mm 20mm X4:12 E42 zone sensor overspeed over speed and the of low";

/** A text of a few words from a small vocabulary, so that documents share them. */
export const noteText = fc
  .array(fc.constantFrom(...words.split(" ")), { maxLength: 14 })
  .map((chosen) => chosen.join(" "));

export const noteQuery = fc
  .array(fc.constantFrom(...words.split(" "), "elevater", "brak", "snesor", "unknownish"), {
    minLength: 1,
    maxLength: 6,
  })
  .map((chosen) => chosen.join(" "));

/** A document with one of twelve keys. */
export const noteDocument: fc.Arbitrary<SearchDocument> = fc.record({
  key: fc.integer({ min: 0, max: 11 }).map((number) => `note-${number}`),
  kind: fc.constantFrom("callout", "faultNote"),
  fields: fc.record({ title: noteText, symptom: noteText, body: noteText }),
  attributes: fc.record({
    drive: fc.constantFrom("geared", "hydraulic", undefined),
    controllerFamily: fc.subarray(["Tern", "Dunlin", "Petrel"]),
  }),
  date: fc.integer({ min: 1, max: 5 }),
});
