import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { crossingInterval, crossingOf, fitLine, type Line } from "#shared-lib/calculators/balance-physics.ts";
import { counterweightBalance } from "#shared-lib/calculators/counterweight-balance.ts";
import type { CalculatorInput } from "#shared-lib/calculators/field.ts";

const rows = (up: readonly number[], down: readonly number[], loads = [0.3, 0.4, 0.45, 0.5, 0.6]) =>
  loads.map((load, index) => ({ load, up: up[index] ?? 0, down: down[index] ?? 0 }));
const noisy = rows([7.1, 8.0, 8.6, 9.2, 10.3], [11.0, 9.9, 9.3, 8.8, 7.7]);
const even = rows([6.2, 7.6, 8.3, 9.0, 10.4], [10.2, 8.8, 8.1, 7.4, 6.0]);
const compute = (input: CalculatorInput) => counterweightBalance.compute(input);
const lineValue = (key: string, input: CalculatorInput) =>
  compute(input).values.find((each) => each.key === key)?.value;

function need(line: Line | null): Line {
  if (line === null) throw new Error("The readings make no line.");
  return line;
}

/** Plain numbers between 0 and 1, the same each time. */
function* randomNumbers(seed: number): Generator<number, never> {
  let state = seed;
  for (;;) {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    yield (state + 0.5) / 2 ** 32;
  }
}

describe("interval", () => {
  test("holds the true crossing in about 95 of 100 noisy tests", () => {
    const random = randomNumbers(20_261_127);
    const normal = (): number =>
      Math.sqrt(-2 * Math.log(random.next().value)) * Math.cos(2 * Math.PI * random.next().value);
    const truth = 0.45;
    const loads = [0.2, 0.3, 0.4, 0.5, 0.6, 0.7];
    const rounds = 4000;
    let held = 0;
    for (let round = 0; round < rounds; round += 1) {
      const read = (slope: number): Line =>
        need(fitLine(loads.map((load) => ({ load, value: 8 + slope * (load - truth) + 0.4 * normal() }))));
      const interval = crossingInterval(read(10), read(-10), 0.95);
      if (interval !== null && interval.from <= truth && truth <= interval.to) held += 1;
    }
    // Three standard errors of the share over 4000 rounds.
    expect(Math.abs(held / rounds - 0.95)).toBeLessThan(3 * Math.sqrt((0.95 * 0.05) / rounds));
  });

  test("lies around the crossing, and closes where nothing scatters", () => {
    const interval = {
      from: lineValue("from", { currents: noisy }),
      to: lineValue("to", { currents: noisy }),
    };
    expect(interval.from).toBeLessThan(0.4821);
    expect(interval.to).toBeGreaterThan(0.4821);
    const [from, to] = [lineValue("from", { currents: even }), lineValue("to", { currents: even })];
    expect((to ?? 1) - (from ?? 0)).toBeLessThan(1e-6);
  });

  test("two readings a direction fit exactly: no interval, and that is said", () => {
    const result = compute({ currents: rows([7, 9], [10, 8], [0.4, 0.5]) });
    expect(result.values.map(({ key }) => key)).not.toContain("from");
    expect(result.notes[0]).toContain("How sure it is cannot be said");
  });

  test("lines that cross too flat for their scatter have no bounded interval", () => {
    const up = need(
      fitLine([0.3, 0.4, 0.5].map((load, index) => ({ load, value: [8, 9, 8.1][index] ?? 0 }))),
    );
    const down = need(
      fitLine([0.3, 0.4, 0.5].map((load, index) => ({ load, value: [8.1, 7, 8][index] ?? 0 }))),
    );
    expect(crossingInterval(up, down, 0.95)).toBeNull();
  });
});

test("the crossing of exact lines is found wherever they cross", () => {
  const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
  fc.assert(
    fc.property(number(0.3, 0.6), number(2, 40), number(2, 40), number(1, 50), (q, rise, fall, at) => {
      const line = (slope: number) =>
        need(fitLine([0.1, 0.35, 0.8].map((load) => ({ load, value: at + slope * (load - q) }))));
      expect(crossingOf(line(rise), line(-fall))).toBeCloseTo(q, 9);
    }),
  );
});

describe("against the stated balance, second-hand", () => {
  const word = (stated: number, tolerance = 0.02, currents = even) =>
    compute({ currents, stated, tolerance }).verdict.word;

  test("from both sides", () => {
    // The even readings give 0.442857 exactly.
    const q = 0.442857142857;
    expect([word(q - 0.0199), word(q - 0.0201), word(q + 0.0199), word(q + 0.0201)]).toEqual([
      "Within",
      "Outside",
      "Within",
      "Outside",
    ]);
  });

  test("readings whose interval reaches over a bound judge nothing", () => {
    const result = compute({ currents: noisy, stated: 0.48, tolerance: 0.003 });
    expect(result.verdict).toMatchObject({ word: "Not enough", holds: null });
    expect(result.comparisons[0]?.rest).toContain("by these readings");
    expect(word(0.48, 0.1, noisy)).toBe("Within");
    expect(word(0.3, 0.02, noisy)).toBe("Outside");
  });

  test("less than stated points to a heavier car, more to a lighter one", () => {
    expect(compute({ currents: even, stated: 0.5 }).verdict.because).toContain("heavier");
    expect(compute({ currents: even, stated: 0.4 }).verdict.because).toContain("lighter");
  });

  test("nothing stated: the balance is told, nothing judged", () => {
    const { verdict } = compute({ currents: even });
    expect(verdict).toMatchObject({ word: "Not enough", holds: null });
    expect(verdict.sentence).toContain("balances 44.3\u00a0% of the rated load");
  });
});

describe("readings that do not fit", () => {
  test("one load only, or parallel lines, or a meeting point beyond the full car", () => {
    const reason = (currents: ReturnType<typeof rows>) => compute({ currents }).verdict.sentence;
    expect(reason(rows([7, 7.1], [9, 9], [0.4, 0.4]))).toContain("two loads or more");
    expect(reason(rows([7, 8], [9, 10], [0.4, 0.5]))).toContain("do not meet");
    expect(reason(rows([2, 3], [20, 19], [0.1, 0.2]))).toContain("do not meet");
  });

  test("columns exchanged get a sentence at the table, and the meeting point stays", () => {
    const exchanged = even.map(({ load, up, down }) => ({ load, up: down, down: up }));
    const result = compute({ currents: exchanged });
    expect(result.problems.map(({ field }) => field)).toEqual(["currents"]);
    expect(lineValue("balance", { currents: exchanged })).toBeCloseTo(0.442857, 6);
  });

  test("a meeting point outside the loads read is said", () => {
    expect(compute({ currents: rows([5, 6], [9, 8], [0.1, 0.2]) }).notes[0]).toContain("outside the loads");
  });
});

describe("from the empty car", () => {
  const empty = {
    method: "empty",
    ratedLoad: 630,
    powerDown: 6800,
    powerUp: 1200,
    speedUp: 1,
    speedDown: 1,
  } as const;

  test("is compared as it is", () => {
    expect(lineValue("balance", empty)).toBeCloseTo(0.4532, 4);
    expect(compute({ ...empty, stated: 0.45 }).verdict.word).toBe("Within");
    expect(compute({ ...empty, stated: 0.5 }).verdict.word).toBe("Outside");
  });

  test("powers that cannot be are refused with a sentence", () => {
    expect(compute({ ...empty, powerUp: 6800, powerDown: 1200 }).verdict.sentence).toContain("exchanged");
  });
});

test("the plot carries both lines, the readings and the meeting point", () => {
  const [curve] = compute({ currents: even }).drawings;
  if (curve?.kind !== "curve") throw new Error("The plot is missing.");
  expect(curve.series.map(({ name }) => name)).toEqual(["up", "down"]);
  expect(curve.dots?.map(({ points }) => points.length)).toEqual([5, 5]);
  expect(curve.marks[0]?.x).toBeCloseTo(0.442857, 6);
  expect(curve.marks[0]?.y).toBeCloseTo(8.2, 6);
});
