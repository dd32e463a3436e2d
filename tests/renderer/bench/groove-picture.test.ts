import fc from "fast-check";
import { expect, test } from "vitest";
import {
  contactAngles,
  type GrooveDrawing,
  groovePicture,
  grooveSentence,
} from "../../../renderer/features/bench/groove-picture.ts";

const rad = Math.PI / 180;
const drawing = (form: GrooveDrawing["form"], gamma: number, beta: number): GrooveDrawing => ({
  kind: "groove",
  title: "Groove",
  form,
  gamma: gamma * rad,
  beta: beta * rad,
  ropeDiameter: 0.01,
});

test("EN 81-50's whole angles as Feyrer's half angles from the bottom: 95° and 20° are 47.5° to 80°", () => {
  const { from, to } = contactAngles(drawing("round", 20, 95));
  expect(from / rad).toBeCloseTo(47.5, 9);
  expect(to / rad).toBeCloseTo(80, 9);
});

test("a V that is not worn bears on one line of each flank", () => {
  const { from, to } = contactAngles(drawing("hardened wedge", 40, 0));
  expect(from).toBe(to);
  expect(to / rad).toBeCloseTo(70, 9);
});

test("every groove a calculator accepts is drawn with finite numbers, inside its picture", () => {
  fc.assert(
    fc.property(
      fc.constantFrom("round", "wedge", "hardened wedge"),
      fc.double({ min: 25, max: 60, noNaN: true }),
      fc.double({ min: 0, max: 105, noNaN: true }),
      fc.double({ min: 200, max: 1200, noNaN: true }),
      (form, gamma, beta, width) => {
        const picture = groovePicture(drawing(form, gamma, beta), width, 14, "metric");
        const numbers =
          `${picture.body} ${picture.contact} ${picture.flanks.path}`.match(/-?\d+(\.\d+)?/g) ?? [];
        expect(numbers.length).toBeGreaterThan(10);
        expect(`${picture.body}${picture.flanks.path}${picture.undercut?.path}`).not.toContain("NaN");
        for (const place of picture.body.matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/g)) {
          expect(Number(place[1])).toBeGreaterThanOrEqual(0);
          expect(Number(place[1])).toBeLessThanOrEqual(picture.width);
          expect(Number(place[2])).toBeGreaterThan(0);
          expect(Number(place[2])).toBeLessThanOrEqual(picture.height);
        }
      },
    ),
  );
});

test("its sentence names both angles", () => {
  expect(grooveSentence(drawing("round", 30, 95))).toBe(
    "A rope in a round groove, undercut over 95.0\u00a0°, its flanks at 30.0\u00a0°.",
  );
});
