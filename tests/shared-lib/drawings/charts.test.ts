import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { axisSteps, drawnNumber, signedNumber } from "#shared-lib/drawings/axis-steps.ts";
import { curveLayout } from "#shared-lib/drawings/curve-layout.ts";
import { intervalLayout } from "#shared-lib/drawings/interval-line.ts";
import { landingDetailLayout, landingDetailSentence } from "#shared-lib/drawings/landing-detail.ts";
import { miniChainLayout, miniChainSentence } from "#shared-lib/drawings/mini-chain.ts";
import { archesLayout } from "#shared-lib/drawings/repeat-arches.ts";
import { stepCurveLayout } from "#shared-lib/drawings/step-curve.ts";
import { fitLettering, letteringWidth } from "#shared-lib/drawings/text-width.ts";
import type { SignalPanel } from "#shared-lib/drawings/time-signals.ts";
import { timeSignalsLayout } from "#shared-lib/drawings/time-signals.ts";

const notNumbers = /NaN|Infinity/;

describe("axes and numbers", () => {
  it("takes round steps that cover the range", () => {
    expect(axisSteps(0, 26, 4)).toEqual([0, 10, 20, 30]);
    expect(axisSteps(0, 1.6, 4)).toEqual([0, 0.5, 1, 1.5, 2]);
    expect(axisSteps(3, 3).length).toBeGreaterThanOrEqual(2);
    expect(axisSteps(0, 5e-324)).toEqual(axisSteps(0, 0));
  });

  it("covers any range with few steps", () => {
    const value = fc.double({ min: -1e6, max: 1e6, noNaN: true });
    fc.assert(
      fc.property(value, value, (a, b) => {
        const steps = axisSteps(a, b, 5);
        const room = Math.abs(a - b) * 1e-6 + 1e-6;
        expect(steps.length).toBeLessThanOrEqual(8);
        expect(steps[0]).toBeLessThanOrEqual(Math.min(a, b) + room);
        expect(steps.at(-1)).toBeGreaterThanOrEqual(Math.max(a, b) - room);
      }),
    );
  });

  it("writes a real minus and no negative nought", () => {
    expect([drawnNumber(-1.25, 2), drawnNumber(-0.001, 1), signedNumber(0, 0), signedNumber(4, 0)]).toEqual([
      "−1.25",
      "0.0",
      "±0",
      "+4",
    ]);
  });

  it("shortens lettering to its room", () => {
    expect(fitLettering("Terrace", 14, 200)).toBe("Terrace");
    const short = fitLettering("Ground floor hall", 14, 60);
    expect(short).toMatch(/…$/);
    expect(letteringWidth(short, 14)).toBeLessThanOrEqual(60);
  });
});

describe("detail of a landing", () => {
  const input = {
    magnetLength: 300,
    sensorSpacing: 60,
    magnetError: -17,
    outside: true,
    levelWords: "level 3",
  };

  it("is true to 1:6 and dimensions the error", () => {
    const layout = landingDetailLayout(input, 250, 14);
    expect(layout.ratio).toBe(6);
    expect(layout.magnet?.height).toBeCloseTo((300 / 6) * (96 / 25.4), 6);
    expect((layout.error?.to ?? 0) - (layout.error?.from ?? 0)).toBeCloseTo((17 / 6) * (96 / 25.4), 6);
    expect(layout.error?.words).toBe("17 low");
  });

  it("dimensions nothing that is not recorded, and says so", () => {
    const layout = landingDetailLayout({ ...input, magnetLength: null, magnetError: null }, 250, 14);
    expect([layout.magnet, layout.lengthDimension, layout.error]).toEqual([null, null, null]);
    expect(layout.notRecorded).toEqual(["magnet length", "place of the magnet"]);
    expect(landingDetailSentence({ ...input, magnetError: null })).toContain("its place is not measured");
  });
});

describe("time signals", () => {
  const panel = (title: string): SignalPanel => ({
    title,
    from: 0,
    to: 1400,
    unit: "ms",
    signals: [
      {
        name: "upper zone sensor",
        levels: [
          { from: 0, to: 300, state: "off" },
          { from: 300, to: 1400, state: "on" },
        ],
      },
      {
        name: "lower zone sensor",
        activeLow: true,
        levels: [
          { from: 0, to: 500, state: "unknown" },
          { from: 500, to: 1400, state: "on" },
        ],
      },
    ],
    moments: [
      { at: 100, words: "" },
      { at: 130, words: "" },
      { at: 300, words: "" },
      { at: 800, words: "" },
    ],
  });

  it("stands seen right of expected, never over it, and below it where the width is too little", () => {
    const [expected, seen] = timeSignalsLayout([panel("Expected"), panel("Seen")], 700, 14).panels;
    expect(seen?.plotLeft).toBeGreaterThan(expected?.plotRight ?? 0);
    const [above, below] = timeSignalsLayout([panel("Expected"), panel("Seen")], 420, 14).panels;
    expect(below?.top).toBeGreaterThan(above?.axisY ?? 0);
  });

  it("keeps the order of rows, hatches what is unknown, and parts the words of short intervals", () => {
    const [layout] = timeSignalsLayout([panel("Expected")], 500, 14).panels;
    expect(layout?.rows.map((row) => row.name)).toEqual(["upper zone sensor", "lower zone sensor"]);
    expect(layout?.rows[1]?.unknown).toHaveLength(1);
    const intervals = layout?.intervals ?? [];
    for (const [index, one] of intervals.entries()) {
      for (const other of intervals.slice(index + 1)) {
        const wide = (letteringWidth(one.words, 14) + letteringWidth(other.words, 14)) / 2;
        expect(one.y !== other.y || Math.abs(one.wordX - other.wordX) >= wide).toBe(true);
      }
    }
  });

  it("survives an empty span", () => {
    expect(JSON.stringify(timeSignalsLayout([{ ...panel("Seen"), to: 0 }], 500, 14))).not.toMatch(/null|NaN/);
  });
});

describe("curves and charts", () => {
  it("draws any points without a number that is not one", () => {
    const anyNumber = fc.double({ min: -1e4, max: 1e4 });
    const points = fc.array(fc.record({ x: anyNumber, y: anyNumber }), { maxLength: 20 });
    fc.assert(
      fc.property(points, fc.integer({ min: 150, max: 1200 }), (given, width) => {
        const input = {
          x: { words: "time", unit: "s" },
          y: { words: "speed", unit: "m/s", fromZero: true },
          series: [{ name: "car", points: given }],
          limits: [{ value: 1.8, words: "limit", wrongSide: "above" as const }],
        };
        const layout = curveLayout(input, width, 14);
        expect(layout.lines.map((line) => line.path).join("")).not.toMatch(notNumbers);
        expect(layout.ends.every((end) => Number.isFinite(end.y))).toBe(true);
        expect(layout.yTicks.length).toBeLessThanOrEqual(7);
      }),
    );
  });

  it("sets readings on the scale of the lines, the first set filled, the next open", () => {
    const line = [
      { x: 0, y: 0 },
      { x: 10, y: 10 },
    ];
    const layout = curveLayout(
      {
        x: { words: "", unit: "" },
        y: { words: "", unit: "" },
        series: [{ name: "line", points: line }],
        dots: [
          { name: "read", points: [{ x: 0, y: 0 }] },
          { name: "read again", points: [{ x: 10, y: 20 }] },
        ],
        limits: [],
      },
      500,
      14,
    );
    const [low, high] = layout.dots;
    expect([low?.open, high?.open]).toEqual([false, true]);
    expect(layout.lines[0]?.path).toContain(`M${low?.x} ${low?.y}`);
    expect(high?.y).toBe(layout.plot.top);
    expect(high?.x).toBe(layout.plot.right);
  });

  it("parts the words at the lines' ends", () => {
    const flat = (name: string, y: number) => ({
      name,
      points: [
        { x: 0, y },
        { x: 1, y },
      ],
    });
    const layout = curveLayout(
      {
        x: { words: "", unit: "s" },
        y: { words: "", unit: "" },
        series: [flat("a", 1), flat("b", 1), flat("c", 1.01)],
        limits: [],
      },
      500,
      14,
    );
    const ys = layout.ends.map((end) => end.y).sort((a, b) => a - b);
    expect((ys[1] ?? 0) - (ys[0] ?? 0)).toBeGreaterThanOrEqual(16.7);
    expect((ys[2] ?? 0) - (ys[1] ?? 0)).toBeGreaterThanOrEqual(16.7);
  });

  it("draws an arch from each callout of a chain to the next", () => {
    const layout = archesLayout(
      {
        from: 0,
        to: 100,
        ticks: [],
        rows: [{ id: "a", title: "Lift 1", note: "doors", times: [80, 20, 50], standsOut: true }],
      },
      532,
      14,
    );
    expect(layout.rows[0]?.ticks).toHaveLength(3);
    expect(layout.rows[0]?.arches).toHaveLength(2);
    expect(layout.rows[0]?.height).toBeGreaterThanOrEqual(44);
    const xs = layout.rows[0]?.ticks ?? [];
    expect([...xs].sort((a, b) => a - b)).toEqual(xs);
  });

  it("puts an interval on its axis, nothing beyond it", () => {
    const layout = intervalLayout(
      { low: 10, high: 40, estimate: 17, counted: 21, mean: 7.9, axis: { from: 0, to: 30 } },
      120,
      26,
    );
    expect(layout.low).toBeCloseTo(10 + 100 / 3, 6);
    expect(layout.high).toBe(110);
    expect(layout.mean).toBeLessThan(layout.low);
    expect(layout.counted).toBeGreaterThan(layout.estimate);
  });

  it("steps up once for each event, and stays on the axis without any", () => {
    const none = { from: 0, to: 100, events: [], ticks: [], fit: [], band: [], endWords: [], notes: [] };
    expect(stepCurveLayout(none, 500, 14).steps.match(/V/g)).toBeNull();
    const some = stepCurveLayout({ ...none, events: [70, 10, 300, 30] }, 500, 14);
    expect(some.steps.match(/V/g)).toHaveLength(3);
    expect(some.steps).not.toMatch(notNumbers);
  });

  it("draws the chain in its order with room for every word, and names the bridge", () => {
    const contacts = ["stops", "governor", "car door", "6", "7"].map((words) => ({
      id: words,
      words,
      bridged: words === "6",
    }));
    const layout = miniChainLayout(contacts, 200, 14);
    for (const [index, contact] of layout.contacts.entries()) {
      const before = layout.contacts[index - 1];
      if (!before) continue;
      const room = (letteringWidth(contact.contact.words, 14) + letteringWidth(before.contact.words, 14)) / 2;
      expect(contact.middle - before.middle).toBeGreaterThan(room);
      expect(contact.left).toBeGreaterThan(before.right);
    }
    expect(miniChainSentence(contacts)).toBe(
      "Safety chain, simplified: stops, governor, car door, 6, 7. Bridge across 6.",
    );
  });
});
