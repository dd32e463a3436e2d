import { expect, test } from "vitest";
import { readVisit, startVisit, type VisitDraft } from "../../../renderer/features/lifts/visit-draft.ts";

const now = new Date(2026, 10, 24, 12, 0);
const whole: VisitDraft = { ...startVisit("p"), kind: "maintenance", arrived: "09:10", left: "10:40" };

test("a visit is read with its readings line by line and its parts", () => {
  const { input } = readVisit(
    {
      ...whole,
      readings: "brake 24 V\n\n riser 22.8 V ",
      parts: [
        { name: "door roller", quantity: "2", marking: "" },
        { name: "", quantity: "1", marking: "" },
      ],
      chargeable: "no",
    },
    now,
  );
  expect(input).toMatchObject({
    kind: "maintenance",
    engineerId: "p",
    arrivedAt: new Date(2026, 10, 24, 9, 10).toISOString(),
    leftAt: new Date(2026, 10, 24, 10, 40).toISOString(),
    readings: ["brake 24 V", "riser 22.8 V"],
    parts: [{ name: "door roller", quantity: 2, marking: "" }],
    chargeable: false,
    fix: null,
  });
});

test("cause and fix belong together", () => {
  expect(readVisit({ ...whole, cause: "magnet slipped" }, now).problems.fix).toBeDefined();
  expect(readVisit({ ...whole, fix: "magnet set" }, now).problems.cause).toBeDefined();
  expect(readVisit({ ...whole, cause: "magnet slipped", fix: "magnet set" }, now).input?.fix).toEqual({
    cause: "magnet slipped",
    fix: "magnet set",
    group: "not yet known",
  });
});

test("kind, engineer and arrival are needed", () => {
  const { input, problems } = readVisit(startVisit(null), now);
  expect(input).toBeNull();
  expect(Object.keys(problems).filter((key) => problems[key] !== undefined)).toEqual([
    "kind",
    "engineerId",
    "arrivedAt",
  ]);
});
