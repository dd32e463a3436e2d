import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { z } from "zod";
import { defineCalculator } from "#shared-lib/calculators/calculator.ts";
import type { TableField } from "#shared-lib/calculators/field.ts";
import { derived, whoDecides } from "#shared-lib/calculators/source.ts";
import { anyInput } from "./any-input.ts";

const landings = {
  kind: "table",
  key: "landings",
  label: "Landings",
  optional: false,
  least: 2,
  most: 5,
  columns: [
    { kind: "text", key: "marking", label: "Landing", optional: true, longest: 10 },
    {
      kind: "number",
      key: "level",
      label: "Level",
      optional: false,
      quantity: "length",
      unit: "m",
      range: [-50, 500],
      digits: 3,
    },
    {
      kind: "choice",
      key: "side",
      label: "Side",
      optional: true,
      options: [
        { id: "front", words: "front" },
        { id: "rear", words: "rear" },
      ],
    },
  ],
} as const satisfies TableField;

/** Adds the levels of the rows it is given, so that a test sees which rows those were. */
const adder = defineCalculator({
  id: "adder",
  name: "Adder",
  purpose: "Adds levels.",
  words: [],
  cautions: [],
  sources: [derived("a test")],
  formulas: [],
  inputs: [landings],
  work: ({ landings: rows }, pen) => ({
    verdict: { word: "Within", holds: true, sentence: "Added.", because: "", next: "", until: whoDecides },
    comparisons: [],
    values: [
      pen.value(
        "sum",
        "Sum",
        rows.reduce((total, row) => total + row.level, 0),
        "m",
        3,
      ),
      pen.value("rows", "Rows", rows.length, "pieces", 0),
    ],
    drawings: [],
    problems: [],
    notes: rows.map((row) => `${row.marking ?? "none"} ${row.side ?? "none"}`),
  }),
});

const values = (rows: readonly Record<string, unknown>[]) => {
  const result = adder.compute({ landings: rows as never });
  return {
    found: result.values.map(({ value }) => value),
    sentences: result.problems.map(({ sentence }) => sentence),
    missing: result.missing,
  };
};

describe("a table", () => {
  test("gives its rows, SI, empty ones passed over", () => {
    expect(values([{ level: 1 }, {}, { marking: "2", level: 3.5, side: "rear" }])).toEqual({
      found: [4.5, 2],
      sentences: [],
      missing: [],
    });
  });

  test("names row and column of what does not fit, and leaves that row out", () => {
    const { found, sentences } = values([{ level: 1 }, {}, { level: 3500 }, { level: 2 }]);
    expect(found).toEqual([3, 2]);
    expect(sentences).toEqual([
      "Row 3, Level lies between −50.000 m and 500.000 m. Did you mean 350.000 m? It is left out until you decide.",
    ]);
    expect(values([{ level: 1 }, { marking: "G" }, { level: 2 }]).sentences).toEqual([
      "Row 2 still needs: Level. It is left out until then.",
    ]);
  });

  test("with fewer rows than are needed is missing", () => {
    expect(values([{ level: 1 }]).missing).toEqual(["landings"]);
    expect(values([]).missing).toEqual(["landings"]);
  });

  test("is covered by the schema: unknown cells, wrong words and too many rows are refused", () => {
    const schema = z.toJSONSchema(adder.schema);
    expect(schema).toMatchObject({
      properties: {
        landings: { type: "array", maxItems: 5, items: { type: "object", additionalProperties: false } },
      },
    });
    const fits = (rows: unknown): boolean => adder.schema.safeParse({ landings: rows }).success;
    expect(fits([{ level: 1, side: "front" }])).toBe(true);
    expect(fits([{ level: "1" }])).toBe(false);
    expect(fits([{ level: 1, side: "left" }])).toBe(false);
    expect(fits([{ height: 1 }])).toBe(false);
    expect(fits(Array.from({ length: 6 }, () => ({ level: 1 })))).toBe(false);
  });

  test("any table the schema accepts is answered, with finite numbers only", () => {
    let answered = 0;
    fc.assert(
      fc.property(anyInput(adder, true), (input) => {
        expect(adder.schema.safeParse(input).success).toBe(true);
        const result = adder.compute(input);
        if (result.values.length > 0) answered += 1;
        for (const { value } of result.values) expect(Number.isFinite(value)).toBe(true);
      }),
      { numRuns: 300 },
    );
    expect(answered).toBeGreaterThan(10);
  });
});
