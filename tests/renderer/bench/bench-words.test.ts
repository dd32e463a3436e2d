import { describe, expect, test } from "vitest";
import { calculators } from "#shared-lib/calculators/registry.ts";
import { zoneSensors } from "#shared-lib/calculators/zone-sensors.ts";
import type { Calculation } from "#shared-lib/contract/calculation.ts";
import { draftKey, placeOfSearch, searchOfPlace } from "../../../renderer/features/bench/bench-place.ts";
import { calculatorsFor } from "../../../renderer/features/bench/calculators-for.ts";
import { earlierTable } from "../../../renderer/features/bench/earlier-results.ts";
import { fieldGroups } from "../../../renderer/features/bench/field-groups.ts";
import { filledIn, filledInWords } from "../../../renderer/features/bench/filled-in.ts";
import { shownUnit, unitSign } from "../../../renderer/features/bench/unit-words.ts";

describe("the place in the address", () => {
  test("goes there and back; a landing without a lift is none", () => {
    const place = { lift: "l", landing: "3", note: "n" };
    expect(placeOfSearch(searchOfPlace(place))).toEqual(place);
    expect(placeOfSearch({ landing: "3", lift: 7 })).toEqual({ lift: null, landing: null, note: null });
    expect(searchOfPlace({ lift: null, landing: "3", note: null })).toEqual({});
  });

  test("keeps one draft for each lift and landing, whatever note opened it", () => {
    const at = (lift: string | null, landing: string | null) =>
      draftKey("zone-sensors", { lift, landing, note: null });
    expect(new Set([at(null, null), at("a", null), at("a", "1"), at("a", "2"), at("b", "1")]).size).toBe(5);
    expect(draftKey("zone-sensors", { lift: "a", landing: "1", note: "n" })).toBe(at("a", "1"));
  });
});

describe("what is filled in", () => {
  const lift = {
    inputs: { magnetLength: 0.3, landing: "3", measured: "positions" },
    from: {
      magnetLength: "from the lift",
      landing: "from landing 3",
      measured: "from the result of 4 Feb 2026",
    },
  };

  test("is laid over by the note, and each says from where", () => {
    const filled = filledIn(zoneSensors, { lift, note: { number: "N-A-12", preset: { measured: "order" } } });
    expect(filled.input).toEqual({ magnetLength: 0.3, landing: "3", measured: "order" });
    expect(filled.from.measured).toBe("from note N-A-12");
    expect(filledInWords(filled.from)).toBe("filled in from note N-A-12, landing 3 and the lift");
  });

  test("leaves out what the calculator no longer knows", () => {
    const note = { number: "N-A-12", preset: { measured: "by eye", moon: 3, zoneTolerance: "wide" } };
    expect(filledIn(zoneSensors, { lift, note }).input).toEqual(lift.inputs);
    expect(filledIn(zoneSensors, {}).input).toEqual({});
    expect(filledInWords({})).toBe("");
    expect(filledInWords({ a: "from the lift" })).toBe("filled in from the lift");
  });
});

describe("earlier results", () => {
  const inputs = (centre: number) => ({
    magnetLength: 0.3,
    sensorSpacing: 0.06,
    centreUp: centre,
    centreDown: centre,
    zoneTolerance: 0.005,
  });
  const saved = (id: string, centre: number): Calculation => {
    const result = JSON.parse(JSON.stringify(zoneSensors.compute(inputs(centre))));
    return {
      id,
      version: 1,
      createdAt: "2026-02-04T09:00:00.000Z",
      calculatorId: zoneSensors.id,
      calculatorName: zoneSensors.name,
      liftId: "lift",
      landingId: null,
      visitId: null,
      at: "2026-02-04T09:00:00.000Z",
      by: { id: "p", name: "Teo Marlow" },
      inputs: inputs(centre),
      result,
      verdictWord: result.verdict.word,
      verdictSentence: result.verdict.sentence,
    };
  };
  const now = zoneSensors.compute(inputs(-0.017));

  test("carry the verdict they were saved with, and what changed until now", () => {
    const { rows, columns } = earlierTable([saved("old", 0.001)], now, "metric");
    expect(columns[0]?.key).toBe("centre");
    expect(rows[0]).toMatchObject({ id: "old", by: "Teo Marlow", holds: true, same: false });
    expect(rows[0]?.cells.centre?.change).toMatch(/^−18/);
    expect(earlierTable([saved("old", 0.001)], now, "foot-pound").rows[0]?.cells.centre?.change).toMatch(
      /^−0.709/,
    );
  });

  test("the one on the screen is known as such", () => {
    expect(earlierTable([saved("same", -0.017)], now, "metric").rows[0]?.same).toBe(true);
  });

  test("one that cannot be read is left out", () => {
    const broken = { ...saved("broken", 0), result: { verdict: "good" } };
    expect(earlierTable([broken, saved("old", 0.001)], now, "metric").rows.map((row) => row.id)).toEqual([
      "old",
    ]);
    expect(earlierTable([], now, "metric")).toEqual({ columns: [], rows: [] });
  });

  test("compared with nothing, they still stand", () => {
    const { rows } = earlierTable([saved("old", 0.001)], zoneSensors.compute({}), "metric");
    expect(rows[0]?.cells.centre?.change).toBe("");
    expect(rows[0]?.cells.centre?.shown).toContain("+1");
  });
});

describe("words of the page", () => {
  test("fields that follow one another under one name stand together, none is lost", () => {
    for (const { inputs } of calculators) {
      const groups = fieldGroups(inputs);
      expect(groups.flatMap((group) => group.fields)).toEqual(inputs);
      const names = groups.map((group) => group.name);
      expect(names.some((name, index) => index > 0 && name === names[index - 1])).toBe(false);
    }
  });

  test("a count has no unit, an unknown unit is shown as it is", () => {
    expect(unitSign("pieces")).toBeUndefined();
    expect(unitSign("mm")).toBe("mm");
    const unknown = shownUnit("cubit", 1, "foot-pound");
    expect([unknown.sign, unknown.digits, unknown.of(3)]).toEqual(["cubit", 1, 3]);
  });

  test("every calculator is listed until something is asked", () => {
    expect(calculatorsFor("", undefined).map(({ id }) => id)).toEqual(calculators.map(({ id }) => id));
    const found = { alsoReadAs: [], corrections: [], groups: [], hint: null };
    expect(calculatorsFor("moon", found as unknown as Parameters<typeof calculatorsFor>[1])).toEqual([]);
  });
});
