import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { z } from "zod";
import { isShown, type NumberField, startInput } from "#shared-lib/calculators/field.ts";
import { prefill } from "#shared-lib/calculators/prefill.ts";
import { calculatorById, calculators } from "#shared-lib/calculators/registry.ts";
import { resultSchema } from "#shared-lib/calculators/result.ts";
import { problemsOfFormula } from "#shared-lib/formulas/formula.ts";
import { quantityOf, units } from "#shared-lib/quantities.ts";
import { anyInput, isWritten, leavesOf } from "./any-input.ts";

/** What is written by people may hold any word, so then sentences are not searched for words. */
function isHole(leaf: unknown, written: boolean): boolean {
  if (typeof leaf === "number") return !Number.isFinite(leaf);
  if (typeof leaf === "string") return !written && /NaN|Infinity|undefined|\bnull\b|\[object/.test(leaf);
  return leaf === undefined;
}

test("every id is its own and leads back", () => {
  const ids = calculators.map((calculator) => calculator.id);
  expect(new Set(ids).size).toBe(ids.length);
  for (const calculator of calculators) expect(calculatorById(calculator.id)).toBe(calculator);
  expect(calculatorById("nothing-of-that-name")).toBeUndefined();
});

describe.each(calculators.map((calculator) => [calculator.id, calculator] as const))(
  "%s",
  (_, calculator) => {
    const numbers = calculator.inputs.filter((field): field is NumberField => field.kind === "number");

    test("describes itself whole", () => {
      expect(calculator.purpose).toMatch(/^[A-Z].*\.$/);
      expect(calculator.words.length).toBeGreaterThan(3);
      expect(calculator.cautions.length).toBeGreaterThan(0);
      expect(calculator.sources.length).toBeGreaterThan(0);
      expect(calculator.formulas.length).toBeGreaterThan(0);
      const keys = calculator.inputs.map((field) => field.key);
      expect(new Set(keys).size).toBe(keys.length);
      for (const field of calculator.inputs) {
        for (const condition of [field.shownWhen, field.neededWhen]) {
          if (condition === undefined) continue;
          const governing = calculator.inputs.find((other) => other.key === condition.field);
          const options = governing?.kind === "choice" ? governing.options.map((option) => option.id) : [];
          expect(options).toEqual(expect.arrayContaining([...condition.is]));
        }
      }
    });

    test("every formula can be read, its symbols are explained, its sides have one dimension", () => {
      for (const formula of calculator.formulas) expect(problemsOfFormula(formula), formula.name).toEqual([]);
    });

    test("every number field has a unit of its quantity, a range in order and a step", () => {
      for (const field of numbers) {
        expect(quantityOf(field.unit)).toBe(field.quantity);
        expect(units[field.unit].quantity).toBe(field.quantity);
        expect(field.range[0]).toBeLessThan(field.range[1]);
        expect(field.step).toBeGreaterThan(0);
        if (field.start !== undefined) {
          expect(field.start).toBeGreaterThanOrEqual(field.range[0]);
          expect(field.start).toBeLessThanOrEqual(field.range[1]);
        }
      }
    });

    test("its schema is plain JSON Schema and refuses unknown keys", () => {
      const schema = z.toJSONSchema(calculator.schema);
      expect(schema).toMatchObject({ type: "object", additionalProperties: false });
      expect(calculator.schema.safeParse({ unheardOf: 1 }).success).toBe(false);
      const result = calculator.compute(JSON.parse('{"unheardOf":1}'));
      expect(result.verdict.word).toBe("Not enough");
      expect(result.problems[0]?.field).toBe("unheardOf");
    });

    test.each([true, false])(
      "no NaN, no Infinity, no hole in a sentence, for any input (wild: %s)",
      (wild) => {
        fc.assert(
          fc.property(
            anyInput(calculator, wild),
            fc.constantFrom("metric", "foot-pound"),
            (input, system) => {
              expect(calculator.schema.safeParse(input).success).toBe(true);
              const result = calculator.compute(input, system === "metric" ? "metric" : "foot-pound");
              expect(resultSchema.safeParse(result).error?.issues ?? []).toEqual([]);
              const written = isWritten(calculator, input);
              expect(leavesOf(result).filter(({ leaf }) => isHole(leaf, written))).toEqual([]);
            },
          ),
          { numRuns: 600 },
        );
      },
    );

    test("a verdict is true to its comparisons, and always leaves the decision to codes and practice", () => {
      fc.assert(
        fc.property(anyInput(calculator, false), (input) => {
          const { verdict, comparisons } = calculator.compute(input);
          if (comparisons.some((each) => each.holds === false)) expect(verdict.holds).toBe(false);
          if (verdict.holds === true) expect(comparisons.every((each) => each.holds !== false)).toBe(true);
          expect(verdict.until).toContain("Local codes and licensed practice decide.");
          expect(verdict.sentence).toMatch(/\.$/);
        }),
        { numRuns: 400 },
      );
    });

    test("nothing entered: says what is missing or that it is not enough, and finds no fault", () => {
      const result = calculator.compute({});
      expect(result.verdict).toMatchObject({ word: "Not enough", holds: null });
      expect(result.problems).toEqual([]);
    });

    test("a number outside its range gets a sentence at its field and is left out", () => {
      for (const field of numbers) {
        const governed =
          field.shownWhen === undefined ? {} : { [field.shownWhen.field]: field.shownWhen.is[0] ?? "" };
        for (const value of [field.range[0] - Math.max(field.step, 1e-6), field.range[1] + field.step]) {
          const input = { ...governed, [field.key]: value };
          const problem = calculator.compute(input).problems.find((each) => each.field === field.key);
          expect(problem?.sentence, field.key).toMatch(
            /lies between .* and .*\. .*left out until you decide\.$/,
          );
        }
        if (field.whole) {
          const problems = calculator.compute({ ...governed, [field.key]: field.range[0] + 0.5 }).problems;
          expect(problems.map((each) => each.field)).toContain(field.key);
        }
      }
    });

    test("a cell outside its range gets a sentence with row and column and is left out", () => {
      for (const field of calculator.inputs) {
        if (field.kind !== "table") continue;
        const governed =
          field.shownWhen === undefined ? {} : { [field.shownWhen.field]: field.shownWhen.is[0] ?? "" };
        for (const column of field.columns) {
          if (column.kind !== "number") continue;
          const row = { [column.key]: column.range[1] + 1 };
          const result = calculator.compute({ ...governed, [field.key]: [{}, row] });
          const sentences = result.problems.filter((each) => each.field === field.key);
          const start = `Row 2, ${column.label} lies between `;
          expect(sentences.some(({ sentence }) => sentence.startsWith(start))).toBe(true);
        }
      }
    });

    test("a hidden field never counts", () => {
      fc.assert(
        fc.property(anyInput(calculator, true), (input) => {
          const shown = Object.fromEntries(
            Object.entries(input).filter(([key]) => {
              const field = calculator.inputs.find((each) => each.key === key);
              return (
                field !== undefined &&
                isShown(field, calculator.inputs, { ...startInput(calculator.inputs), ...input })
              );
            }),
          );
          expect(calculator.compute(input)).toEqual(calculator.compute(shown));
        }),
      );
    });

    test("is pure: the same input, frozen, gives the same answer", () => {
      fc.assert(
        fc.property(anyInput(calculator, true), (input) => {
          const frozen = Object.freeze({ ...input });
          expect(calculator.compute(frozen)).toEqual(calculator.compute(frozen));
        }),
      );
    });

    test("units change the words only, never a number or a verdict", () => {
      fc.assert(
        fc.property(anyInput(calculator, false), (input) => {
          const metric = calculator.compute(input);
          const foot = calculator.compute(input, "foot-pound");
          expect(foot.verdict.word).toBe(metric.verdict.word);
          expect(foot.comparisons.map((each) => [each.value, each.holds])).toEqual(
            metric.comparisons.map((each) => [each.value, each.holds]),
          );
          expect(foot.values.map((each) => each.value)).toEqual(metric.values.map((each) => each.value));
        }),
      );
    });

    test("prefilled from facts it asks for, the preset wins, unknown keys of an old preset are left out", () => {
      const facts = {
        "lift.ratedSpeed": 1,
        "lift.magnetLength": 0.3,
        "lift.unlockingZone": 0.35,
        "lift.unlockNeeds": "both",
        "lift.busBitRate": 125_000,
        "lift.sensorSpacing": null,
        "landing.marking": "3",
      } as const;
      const { input, origins } = prefill(calculator, facts, { speed: 0.3, gone: 7, measured: "nonsense" });
      expect(calculator.schema.safeParse(input).success).toBe(true);
      expect(Object.keys(input).sort()).toEqual(Object.keys(origins).sort());
      if (calculator.inputs.some((field) => field.key === "speed")) expect(input.speed).toBe(0.3);
      if (calculator.id === "zone-sensors") {
        expect(input).toMatchObject({
          unlockingZone: "350",
          unlockNeeds: "both",
          landing: "3",
          magnetLength: 0.3,
        });
        expect(input.sensorSpacing).toBeUndefined();
      }
      if (calculator.id === "panel-bus") expect(input.bitRate).toBe("125");
    });
  },
);
