import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { edgeWords, expectedOrder } from "#shared-lib/calculators/zone-order.ts";
import type { CheckedLift } from "#shared-lib/check-plans/check-plan.ts";
import { checkPlanById, checkPlans } from "#shared-lib/check-plans/plan-list.ts";
import { orderOfEdges } from "#shared-lib/check-plans/zone-sensors-plan.ts";
import { type PlanStep, planStepSchema } from "#shared-lib/contract/check.ts";
import { type Landing, type Lift, liftFieldsSchema, type Signal } from "#shared-lib/contract/lift.ts";
import { doorKinds, driveKinds } from "#shared-lib/words.ts";

const id = (number: number): string => `01890000-0000-7000-8000-${String(number).padStart(12, "0")}`;
const made = { version: 1, createdAt: "2026-01-01T00:00:00.000Z" };

function lift(fields: Partial<Lift> = {}): Lift {
  return {
    ...liftFieldsSchema.parse({ siteId: id(1), name: "Lift 2" }),
    id: id(2),
    ...made,
    state: "in service",
    stateReason: "",
    stateSince: null,
    stateBy: null,
    ...fields,
  };
}

const landing = (marking: string, index: number, entrances: Landing["entrances"] = "front"): Landing => ({
  id: id(100 + index),
  ...made,
  liftId: id(2),
  marking,
  name: "",
  level: index * 3,
  entrances,
});

const fourLandings = ["0", "1", "2", "3"].map((marking, index) => landing(marking, index));
const checked = (
  fields: Partial<Lift> = {},
  landings = fourLandings,
  signals: Signal[] = [],
): CheckedLift => ({
  lift: lift(fields),
  landings,
  signals,
});

function steps(planId: string, lift: CheckedLift = checked()): readonly PlanStep[] {
  const plan = checkPlanById(planId);
  if (!plan) throw new Error(`no plan ${planId}`);
  return plan.steps(lift);
}
function step(planId: string, key: string, lift?: CheckedLift): PlanStep {
  const found = steps(planId, lift).find((one) => one.key === key);
  if (!found) throw new Error(`no step ${key} in ${planId}`);
  return found;
}
const orderAt = (key: string, lift?: CheckedLift): readonly string[] => {
  const { expected } = step("zone-sensors", key, lift);
  return expected.kind === "order" ? expected.order : [];
};

const anyLift = fc
  .record({
    driveKind: fc.constantFrom(...driveKinds, null),
    doorKind: fc.constantFrom(...doorKinds, null),
    upSlowdownDistance: fc.constantFrom(null, 1.8),
    downFinalDistance: fc.constantFrom(null, 0.1),
    entrances: fc.array(fc.constantFrom("front" as const, "rear" as const, "both" as const), {
      maxLength: 12,
    }),
  })
  .map(({ entrances, ...fields }) =>
    checked(
      fields,
      entrances.map((side, index) => landing(String(index), index, side)),
    ),
  );

describe("every plan, for any lift", () => {
  test("makes steps that fit the contract, with keys of their own, a caution, a source and words to search with", () => {
    fc.assert(
      fc.property(anyLift, (one) => {
        for (const plan of checkPlans) {
          const made = plan.steps(one);
          for (const each of made) {
            expect(planStepSchema.parse(each)).toEqual(each);
            for (const text of [each.title, each.how, each.caution, each.source, each.searchWords])
              expect(text.trim(), each.key).not.toBe("");
          }
          expect(new Set(made.map(({ key }) => key)).size).toBe(made.length);
        }
      }),
    );
  });

  test("gives no limit without saying where it is from", () => {
    fc.assert(
      fc.property(anyLift, (one) => {
        for (const { expected } of checkPlans.flatMap((plan) => plan.steps(one))) {
          if (expected.kind !== "value") continue;
          expect(expected.source === "").toBe(expected.least === null && expected.most === null);
        }
      }),
    );
  });

  test("has cautions, and never tells anybody to link, hold or override a contact", () => {
    const forbidden =
      /\b(bridge out|jumper|link(?:s|ed)? (?:out|across|the contact)|wedge|override|hold the contact|push in the contactor)\b/i;
    for (const plan of checkPlans) {
      expect(plan.cautions.length, plan.id).toBeGreaterThan(1);
      for (const { how, expected } of plan.steps(checked())) {
        expect(how).not.toMatch(forbidden);
        if (expected.kind === "yes") expect(expected.question).toMatch(/\?$/);
      }
    }
    expect("Bridge out the door contact").toMatch(forbidden);
  });

  test("keeps its keys when a landing is added below", () => {
    const more = [landing("-1", -1), ...fourLandings];
    for (const plan of checkPlans) {
      const before = plan.steps(checked()).map(({ key }) => key);
      const after = new Set(plan.steps(checked({}, more)).map(({ key }) => key));
      expect(
        before.filter((key) => !after.has(key)),
        plan.id,
      ).toEqual([]);
    }
  });
});

describe("zone sensors", () => {
  test("moving up the upper sensor comes on first, moving down the lower one", () => {
    expect(orderAt(`zone-up-${id(101)}`)).toEqual(["upper on", "lower on", "upper off", "lower off"]);
    expect(orderAt(`zone-down-${id(101)}`)).toEqual(["lower on", "upper on", "lower off", "upper off"]);
  });

  test("agrees with the order the calculator reads", () => {
    for (const direction of ["up", "down"] as const) {
      const edges = orderOfEdges(direction, "through", { magnetLength: 0.3, sensorSpacing: 0.1 });
      expect(edges).toEqual(expectedOrder(direction, "car"));
      expect(edges.map((edge) => edgeWords[edge])).toEqual(orderAt(`zone-${direction}-${id(102)}`));
    }
  });

  test("at a terminal landing only the edges that the car can reach are asked for", () => {
    expect(orderAt(`zone-down-${id(100)}`)).toEqual(["lower on", "upper on"]);
    expect(orderAt(`zone-up-${id(100)}`)).toEqual(["upper off", "lower off"]);
    expect(orderAt(`zone-up-${id(103)}`)).toEqual(["upper on", "lower on"]);
    expect(orderAt(`zone-down-${id(103)}`)).toEqual(["lower off", "upper off"]);
  });

  test("where the spacing is recorded as longer than the magnet, the signals come one after the other", () => {
    const apart = checked({ magnetLength: 0.1, sensorSpacing: 0.2 });
    expect(orderAt(`zone-up-${id(101)}`, apart)).toEqual(["upper on", "upper off", "lower on", "lower off"]);
    expect(orderAt(`zone-up-${id(103)}`, apart)).toEqual(["upper on", "upper off"]);
  });

  test("agrees with walking the car along the magnet millimetre by millimetre", () => {
    const millimetres = fc.integer({ min: 10, max: 400 });
    fc.assert(
      fc.property(
        millimetres,
        millimetres,
        fc.constantFrom("up" as const, "down" as const),
        (length, spacing, direction) => {
          fc.pre(length !== spacing);
          const seen: string[] = [];
          const covered = (x: number) => Math.abs(x) * 2 < length * 2 && Math.abs(x) < length / 2;
          let before = { upper: false, lower: false };
          for (let walked = -2000; walked <= 2000; walked++) {
            const car = (direction === "up" ? walked : -walked) / 2;
            const now = { upper: covered(car + spacing / 2), lower: covered(car - spacing / 2) };
            for (const sensor of ["upper", "lower"] as const)
              if (now[sensor] !== before[sensor]) seen.push(`${sensor}${now[sensor] ? "On" : "Off"}`);
            before = now;
          }
          expect(
            orderOfEdges(direction, "through", { magnetLength: length, sensorSpacing: spacing }),
          ).toEqual(seen);
        },
      ),
      { numRuns: 60 },
    );
  });

  test("names the inputs of the site's own drawing where they are recorded", () => {
    const signal: Signal = {
      id: id(50),
      ...made,
      liftId: id(2),
      name: "Lower zone",
      role: "lower zone sensor",
      marking: "X4:12",
      activeLevel: "high",
      landingId: null,
    };
    expect(step("zone-sensors", `zone-up-${id(101)}`, checked({}, fourLandings, [signal])).how).toContain(
      "X4:12",
    );
  });
});

describe("slowdown and final switches", () => {
  test("compares with the lift's own recorded distance and with nothing else", () => {
    const recorded = checked({ upSlowdownDistance: 1.8, upFinalDistance: 0.12 });
    expect(step("terminal-slowdown", "slowdown-distance-up", recorded).expected).toMatchObject({
      least: 1.8,
      most: null,
    });
    expect(step("terminal-slowdown", "final-distance-up", recorded).expected).toMatchObject({
      least: null,
      most: 0.12,
    });
    expect(step("terminal-slowdown", "slowdown-distance-up").expected).toMatchObject({
      least: null,
      most: null,
      source: "",
    });
    expect(step("terminal-slowdown", "slowdown-order-down").expected).toMatchObject({
      order: ["slowdown switch", "landing level", "final switch"],
    });
  });

  test("stands at the top and the bottom landing, and needs both", () => {
    expect(step("terminal-slowdown", "slowdown-distance-up").landingMarking).toBe("3");
    expect(step("terminal-slowdown", "slowdown-distance-down").landingMarking).toBe("0");
    expect(steps("terminal-slowdown", checked({}, fourLandings.slice(0, 1)))).toEqual([]);
  });

  test("asks a hydraulic lift for a lower final switch only where one is recorded", () => {
    const keys = (fields: Partial<Lift>) => steps("terminal-slowdown", checked(fields)).map(({ key }) => key);
    expect(keys({ driveKind: "hydraulic" })).not.toContain("final-chain-down");
    expect(keys({ driveKind: "hydraulic" })).toContain("final-chain-up");
    expect(keys({ driveKind: "hydraulic", downFinalDistance: 0.1 })).toContain("final-chain-down");
    expect(keys({ driveKind: "geared traction" })).toContain("final-chain-down");
  });
});

test("inspection speeds carry their limit, marked as from memory", () => {
  expect(step("inspection-controls", "speed").expected).toMatchObject({
    most: 0.63,
    source: expect.stringMatching(/5\.12\.1\.5\.2.*from memory/),
  });
  expect(step("inspection-controls", "speed-near-ends").expected).toMatchObject({ most: 0.3 });
  expect(step("inspection-controls", "pit-station-speed").expected).toMatchObject({ most: 0.3 });
});

test("the pit station is used only after the pit stop switches, and the car top speeds need an empty pit", () => {
  const keys = steps("inspection-controls").map(({ key }) => key);
  for (const later of ["pit-station-buttons", "pit-station-speed", "two-stations", "pit-return"])
    expect(keys.indexOf(later), later).toBeGreaterThan(keys.indexOf("pit-stop"));
  expect(step("inspection-controls", "speed-near-ends").how).toMatch(/nobody in the pit/);
  for (const key of ["pit-station-buttons", "pit-station-speed"])
    expect(step("inspection-controls", key)).toMatchObject({
      part: "pit",
      how: expect.stringMatching(/nobody on the car top/),
    });
});

test("door steps follow the entrances, and a hinged door is not commanded", () => {
  const both = checked({}, [landing("0", 0, "both"), landing("1", 1)]);
  expect(
    steps("door-commands", both)
      .filter(({ key }) => key.startsWith("door-open-limit"))
      .map(({ title }) => title),
  ).toEqual([
    "Open command: door open limit, landing 0 front",
    "Open command: door open limit, landing 0 rear",
    "Open command: door open limit, landing 1 front",
  ]);
  expect(
    steps("door-commands", checked({ doorKind: "hinged" })).some(({ key }) => key.includes("limit")),
  ).toBe(false);
  expect(steps("door-commands", checked({}, []))).toEqual([]);
});

test("the chain check asks every landing door to open the chain, and compares the register first", () => {
  const made = steps("chain-free-of-bridges");
  expect(made[0]?.key).toBe("register-compared");
  const doors = made.filter(({ key }) => key.startsWith("chain-landing-door"));
  expect(doors.map(({ landingMarking, expected }) => [landingMarking, expected])).toEqual(
    fourLandings.map(({ marking }) => [marking, { kind: "state", on: false }]),
  );
});
