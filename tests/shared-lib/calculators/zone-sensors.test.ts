import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { CalculatorInput } from "#shared-lib/calculators/field.ts";
import { expectedOrder, type ZoneEdge } from "#shared-lib/calculators/zone-order.ts";
import { zoneSensors } from "#shared-lib/calculators/zone-sensors.ts";

const compute = (input: CalculatorInput) => zoneSensors.compute(input);
const word = (input: CalculatorInput): string => compute(input).verdict.word;
const right: readonly ZoneEdge[] = ["upperOn", "lowerOn", "upperOff", "lowerOff"];
const turned: readonly ZoneEdge[] = ["lowerOn", "upperOn", "lowerOff", "upperOff"];

describe("order only", () => {
  const order = (
    orderUp: readonly ZoneEdge[] | undefined,
    orderDown: readonly ZoneEdge[] | undefined,
    more = {},
  ) => compute({ measured: "order", orderUp, orderDown, ...more }).verdict;

  test("right in both directions", () => {
    expect(order(right, turned)).toMatchObject({ word: "Within", holds: true });
  });

  test("right in one direction says that the other is missing", () => {
    expect(order(right, undefined)).toMatchObject({ word: "Not enough", holds: null });
    expect(order(right, undefined).next).toContain("other direction");
  });

  test("reversed at every landing in both directions: crossed, unless the count runs against the car", () => {
    const everywhere = { seenAt: "everywhere" };
    expect(order(turned, right, everywhere).word).toBe("Crossed");
    expect(order(turned, right, everywhere).next).toContain("position count");
    expect(order(turned, right, { ...everywhere, countDirection: "with" }).sentence).toContain(
      "are crossed.",
    );
    expect(order(turned, right, { ...everywhere, countDirection: "against" }).word).toBe("Reversed");
  });

  test("right order with the count against the car: two reversals hide each other", () => {
    expect(order(right, turned, { countDirection: "against" }).word).toBe("Crossed");
  });

  test("reversed at one landing only: the magnet there, never the wires", () => {
    const verdict = order(turned, right, { seenAt: "here", landing: "3" });
    expect(verdict.word).toBe("Reversed");
    expect(verdict.because).toContain("Crossed wires would show at every landing");
    expect(verdict.next).toContain("magnet at landing 3");
  });

  test("reversed with no other landing checked blames nothing", () => {
    const verdict = order(turned, right);
    expect(verdict.because).toContain("cannot tell");
    expect(verdict.next).toContain("another landing");
  });

  test("reversed in one direction only cannot come from crossing", () => {
    const verdict = order(turned, turned, { seenAt: "everywhere" });
    expect(verdict.word).toBe("Reversed");
    expect(verdict.because).toContain("Crossed wires reverse both directions");
  });

  test("one signal never seen is dead; seen at other landings it is the magnet here", () => {
    const upperOnly: readonly ZoneEdge[] = ["upperOn", "upperOff"];
    expect(order(upperOnly, upperOnly, { seenAt: "everywhere" })).toMatchObject({
      word: "Dead",
      holds: false,
    });
    expect(order(upperOnly, upperOnly, { seenAt: "everywhere" }).sentence).toContain("lower");
    expect(order(upperOnly, upperOnly, { seenAt: "here" }).word).toBe("Misplaced");
    expect(order(upperOnly, turned).word).toBe("Irregular");
    expect(order([], []).word).toBe("Dead");
  });

  test("bounce, gap and a broken order have words of their own", () => {
    expect(order(["upperOn", "upperOff", "upperOn", "upperOff"], turned).word).toBe("Irregular");
    expect(order(["upperOn", "upperOff", "lowerOn", "lowerOff"], undefined).word).toBe("No overlap");
    expect(order(["upperOn", "lowerOn", "lowerOff", "upperOff"], turned).word).toBe("Irregular");
  });

  test("sensors in the well: the two orders swap", () => {
    expect(expectedOrder("up", "well")).toEqual(expectedOrder("down", "car"));
    expect(order(turned, right, { sensorsOn: "well" }).word).toBe("Within");
  });

  test("never suggests a bridge, and isolates before hands go in", () => {
    const runs: (readonly ZoneEdge[] | undefined)[] = [right, turned, [], ["upperOn", "upperOff"], undefined];
    for (const up of runs) {
      for (const down of runs) {
        for (const seenAt of ["unknown", "here", "everywhere"]) {
          const { next, sentence, because } = order(up, down, { seenAt });
          expect(`${next} ${sentence} ${because}`).not.toMatch(/bridg|jumper|short out|link out/i);
        }
      }
    }
  });
});

const sketch = {
  landing: "3",
  magnetLength: 0.3,
  sensorSpacing: 0.06,
  centreUp: -0.011,
  centreDown: -0.023,
  zoneTolerance: 0.005,
  unlockingZone: "200",
  unlockNeeds: "both",
  ratedSpeed: 1,
  speed: 0.3,
};
const comparison = (input: CalculatorInput, key: string) =>
  compute(input).comparisons.find((each) => each.key === key);
const value = (input: CalculatorInput, key: string) =>
  compute(input).values.find((each) => each.key === key)?.value;

describe("what is compared with what", () => {
  test("the magnet is blamed only when the other landings are within", () => {
    const within = compute({ ...sketch, othersChecked: 5, othersLargest: 0.002 }).verdict;
    expect(within).toMatchObject({ word: "Misplaced", holds: false });
    expect(within.sentence).toBe("The magnet at landing 3 sits 17\u00a0mm low against the other landings.");
    expect(within.because).toBe(
      "The other five checked landings are within 2\u00a0mm, so it is this magnet, not the sensors.",
    );
    expect(within.next).toContain("Move it up 17\u00a0mm");

    const alone = compute(sketch).verdict;
    expect(alone.word).toBe("Outside");
    expect(alone.sentence).toContain("sensor, bracket or magnet");
    expect(alone.next).toBe("Measure another landing.");

    const all = compute({ ...sketch, othersChecked: 5, othersLargest: 0.018 }).verdict;
    expect(all.word).toBe("Outside");
    expect(all.because).toContain("bracket");
  });

  test("a magnet that is too high is moved down", () => {
    const high = { ...sketch, centreUp: 0.023, centreDown: 0.011, othersChecked: 1, othersLargest: 0.001 };
    expect(compute(high).verdict.next).toContain("Move it down 17\u00a0mm");
    expect(compute(high).verdict.because).toContain("The other checked landing is within");
  });

  test("±10 mm only for the measured distance of the sills, from both sides", () => {
    expect(comparison(sketch, "sills")).toBeUndefined();
    const at = (sillDistance: number) => comparison({ ...sketch, sillDistance }, "sills")?.holds;
    expect([0.01, -0.01, 0.0099, -0.0099].map(at)).toEqual([true, true, true, true]);
    expect([0.01001, -0.01001].map(at)).toEqual([false, false]);
  });

  test("the centre against the site's own tolerance only, from both sides; without one there is no verdict on it", () => {
    const at = (centre: number) =>
      comparison({ ...sketch, centreUp: centre, centreDown: centre }, "centre")?.holds;
    expect([0.005, -0.005].map(at)).toEqual([true, true]);
    expect([0.00501, -0.00501].map(at)).toEqual([false, false]);
    const { zoneTolerance: _, ...without } = sketch;
    expect(comparison(without, "centre")).toMatchObject({
      holds: null,
      word: "no limit given",
      value: -0.017,
    });
    expect(comparison(without, "centre")?.limit).toMatchObject({ least: null, most: null });
  });

  test("the reach against the unlocking zone, by the signals needed to unlock, from both sides", () => {
    expect(comparison(sketch, "reach")?.value).toBeCloseTo(0.137, 12);
    expect(comparison({ ...sketch, unlockNeeds: "either" }, "reach")?.value).toBeCloseTo(0.197, 12);
    const at = (magnetLength: number, unlockingZone: string) =>
      comparison(
        { ...sketch, centreUp: 0, centreDown: 0, sensorSpacing: 0.06, magnetLength, unlockingZone },
        "reach",
      )?.holds;
    expect([at(0.46, "200"), at(0.4601, "200"), at(0.76, "350"), at(0.7601, "350")]).toEqual([
      true,
      false,
      true,
      false,
    ]);
    const { unlockNeeds: _, ...notAsked } = sketch;
    expect(comparison(notAsked, "reach")).toBeUndefined();
  });

  test("magnet length has no default", () => {
    const { magnetLength: _, ...without } = sketch;
    expect(compute(without)).toMatchObject({ verdict: { word: "Not enough" }, missing: ["magnetLength"] });
  });

  test("a magnet no longer than the spacing never unlocks where both signals are needed", () => {
    const narrow = { ...sketch, magnetLength: 0.06, centreUp: 0, centreDown: 0 };
    expect(word(narrow)).toBe("No overlap");
    expect(word({ ...narrow, magnetLength: 0.061 })).toBe("Within");
  });

  test("where either signal unlocks, the level may still lie in the gap between two zones that do not meet", () => {
    const gap = {
      ...sketch,
      magnetLength: 0.06,
      sensorSpacing: 0.1,
      centreUp: 0,
      centreDown: 0,
      unlockNeeds: "either",
    };
    expect(comparison(gap, "level")).toMatchObject({ holds: false });
    expect(comparison({ ...gap, sensorSpacing: 0.05 }, "level")).toMatchObject({ holds: true });
  });

  test("no centre entered: says what to enter", () => {
    const { centreUp: _up, centreDown: _down, ...without } = sketch;
    expect(compute(without)).toMatchObject({
      verdict: { word: "Not enough" },
      missing: ["centreUp", "centreDown"],
    });
    expect(compute({ ...without, sillDistance: 0.02 }).verdict).toMatchObject({
      word: "Outside",
      holds: false,
    });
  });

  test("all within", () => {
    expect(word({ ...sketch, centreUp: 0.004, centreDown: -0.002, sillDistance: 0.003 })).toBe("Within");
  });
});

describe("contradictions get a sentence at their field", () => {
  const problem = (input: CalculatorInput, field: string) =>
    compute(input).problems.find((each) => each.field === field)?.sentence;

  test("check speed above the rated speed: a slipped point, and no delay is computed", () => {
    const fast = { ...sketch, speed: 3 };
    expect(problem(fast, "speed")).toBe(
      "Above this lift's 1.00\u00a0m/s. A slipped point, 0.30\u00a0m/s? No signal delay is computed until you decide.",
    );
    expect(value(fast, "delay")).toBeUndefined();
    expect(value(sketch, "delay")).toBeCloseTo(0.02, 12);
    expect(problem({ ...sketch, speed: 1 }, "speed")).toBeUndefined();
  });

  test("up and down exchanged", () => {
    const exchanged = { ...sketch, centreUp: -0.023, centreDown: -0.011 };
    expect(problem(exchanged, "centreDown")).toContain("exchanged");
    expect(value(exchanged, "delay")).toBeUndefined();
    expect(value(exchanged, "centre")).toBeCloseTo(-0.017, 12);
  });

  test("up and down further apart than a signal delay can put them", () => {
    expect(problem({ ...sketch, centreUp: 0.4, centreDown: -0.4 }, "centreDown")).toContain("differ by more");
  });

  test("a signal that goes off before it came on", () => {
    const edges = { measured: "edges", upUpperOn: 0.1, upUpperOff: -0.1, upLowerOn: -0.1, upLowerOff: 0.2 };
    expect(problem(edges, "upUpperOff")).toContain("goes off before it came on");
  });

  test("others given but none counted", () => {
    expect(problem({ ...sketch, othersLargest: 0.002 }, "othersChecked")).toContain("none is counted");
  });
});

/** Edge positions or times of a run as a lift with these numbers would give them. */
const lift = fc.record({
  length: fc.double({ min: 0.1, max: 0.6, noNaN: true }),
  share: fc.double({ min: 0.05, max: 0.9, noNaN: true }),
  centre: fc.double({ min: -0.03, max: 0.03, noNaN: true }),
  speed: fc.double({ min: 0.1, max: 1, noNaN: true }),
  delay: fc.double({ min: 0.001, max: 0.05, noNaN: true }),
});

describe("edges and times measure what made them", () => {
  const edgesOf = (l: number, s: number, e: number) => ({
    UpperOn: [e - l / 2 - s / 2, e + l / 2 - s / 2],
    UpperOff: [e + l / 2 - s / 2, e - l / 2 - s / 2],
    LowerOn: [e - l / 2 + s / 2, e + l / 2 + s / 2],
    LowerOff: [e + l / 2 + s / 2, e - l / 2 + s / 2],
  });

  test("edge positions in both directions", () => {
    fc.assert(
      fc.property(lift, ({ length, share, centre, speed, delay }) => {
        const input: Record<string, number | string> = { measured: "edges", speed };
        for (const [edge, [up = 0, down = 0]] of Object.entries(edgesOf(length, length * share, centre))) {
          input[`up${edge}`] = up + speed * delay;
          input[`down${edge}`] = down - speed * delay;
        }
        expect(value(input, "upperLength")).toBeCloseTo(length, 9);
        expect(value(input, "lowerLength")).toBeCloseTo(length, 9);
        expect(value(input, "spacing")).toBeCloseTo(length * share, 9);
        expect(value(input, "centre")).toBeCloseTo(centre, 9);
        expect(value(input, "delay")).toBeCloseTo(delay, 9);
      }),
    );
  });

  test("edge times with the time of passing the level", () => {
    fc.assert(
      fc.property(lift, ({ length, share, centre, speed, delay }) => {
        const input: Record<string, number | string> = {
          measured: "times",
          speed,
          upLevelTime: 10,
          downLevelTime: 20,
        };
        for (const [edge, [up = 0, down = 0]] of Object.entries(edgesOf(length, length * share, centre))) {
          input[`up${edge}Time`] = 10 + up / speed + delay;
          input[`down${edge}Time`] = 20 - down / speed + delay;
        }
        expect(value(input, "upperLength")).toBeCloseTo(length, 9);
        expect(value(input, "spacing")).toBeCloseTo(length * share, 9);
        expect(value(input, "centre")).toBeCloseTo(centre, 9);
        expect(value(input, "delay")).toBeCloseTo(delay, 9);
      }),
    );
  });

  const times = {
    measured: "times",
    speed: 0.3,
    upUpperOnTime: 0,
    upLowerOnTime: 0.2,
    upUpperOffTime: 1,
    upLowerOffTime: 1.2,
  };

  test("S = v (t_lower on - t_upper on), L = v (t_off - t_on); no level time, no centre", () => {
    expect(value(times, "spacing")).toBeCloseTo(0.06, 12);
    expect(value(times, "upperLength")).toBeCloseTo(0.3, 12);
    expect(value(times, "centre")).toBeUndefined();
    expect(word(times)).toBe("Not enough");
  });

  test("reversed times are told as a reversed order, not as numbers", () => {
    const reversed = {
      ...times,
      upUpperOnTime: 0.2,
      upLowerOnTime: 0,
      upUpperOffTime: 1.2,
      upLowerOffTime: 1,
    };
    expect(word(reversed)).toBe("Reversed");
    expect(compute(reversed).values).toEqual([]);
  });

  test("length and spacing off by the same ratio: the speed is wrong", () => {
    const notes = compute({ ...times, speed: 0.33, magnetLength: 0.3, sensorSpacing: 0.06 }).notes.join(" ");
    expect(notes).toContain("the speed was more likely 0.30\u00a0m/s");
    const only = compute({ ...times, magnetLength: 0.2, sensorSpacing: 0.06 }).notes.join(" ");
    expect(only).not.toContain("more likely");
  });

  test("times without a believable speed are not computed", () => {
    const result = compute({ ...times, speed: 3, ratedSpeed: 1 });
    expect(result.verdict.word).toBe("Not enough");
    expect(result.problems[0]?.field).toBe("speed");
  });
});
