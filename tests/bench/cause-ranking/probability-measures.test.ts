import { expect, test } from "vitest";
import { calibration, measureForecasts } from "./probability-measures.ts";

const forecast = (a: number, b: number, c: number, truth: string) => ({
  probabilities: new Map([
    ["a", a],
    ["b", b],
    ["c", c],
  ]),
  truth,
});

test("Brier score, first and first three by hand", () => {
  const figures = measureForecasts([
    forecast(0.7, 0.2, 0.1, "a"), // 0.09 + 0.04 + 0.01
    forecast(0.5, 0.3, 0.2, "c"), // 0.25 + 0.09 + 0.64
    forecast(1, 0, 0, "gone"), // 1 for what was sure and wrong, 1 for what was not foreseen
  ]);
  expect(figures).toEqual({
    callouts: 3,
    first: 1 / 3,
    firstThree: 2 / 3,
    brier: expect.closeTo((0.14 + 0.98 + 2) / 3, 12),
  });
});

test("calibration sets what was said beside how often it was so", () => {
  const bins = calibration([forecast(0.7, 0.2, 0.1, "a"), forecast(0.9, 0.1, 0, "b")], 2);
  expect(bins).toEqual([
    { from: 0, count: 4, said: expect.closeTo(0.1, 12), happened: 0.25 },
    { from: 0.5, count: 2, said: expect.closeTo(0.8, 12), happened: 0.5 },
  ]);
});
