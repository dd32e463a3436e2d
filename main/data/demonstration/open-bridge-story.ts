import type { Expected, Found } from "#shared-lib/contract/check.ts";
import type { BatchAsk } from "../data-core.ts";
import { type Happening, playCallout, type Signers } from "./play-callout.ts";
import { bridgeCallout, type StoryFrame } from "./stories.ts";

const minute = 60_000;

/**
 * The lift with an open bridge: zone signals checked landing by landing, the magnet at landing 3 found low, then the
 * landing 6 door contact found open and a bridge entered in the register under inspection control.
 */
export function openBridgeStory(frame: StoryFrame, signers: Signers): Happening[] {
  const plan = bridgeCallout(frame);
  const lift = frame.lift("Kittiwake House, Lift 2");
  const ines = signers.engineer(plan.engineerId);
  const ids = { calloutId: "" };
  const callout = playCallout(plan, signers, ({ calloutId }) => {
    ids.calloutId = calloutId;
  });
  return [
    ...callout,
    { at: plan.receivedAt + 58 * minute, happen: (ask) => checkZones(ask, lift.id, ids.calloutId, ines) },
    {
      at: plan.receivedAt + 66 * minute,
      happen: (ask) => saveZoneResult(ask, lift.id, lift.landingIds[3] ?? null, ines),
    },
    {
      at: plan.receivedAt + 73 * minute,
      happen: (ask) =>
        void ask(
          "bridge.set",
          {
            liftId: lift.id,
            calloutId: ids.calloutId,
            contact: "landing door contact",
            points: "34–35",
            landingId: lift.landingIds[6] ?? null,
            reason: "Door contact at landing 6 does not make; car to be moved to reach the door",
            control: "inspection",
            leadNumber: "2",
          },
          ines,
        ),
    },
  ];
}

/** Landings 0 to 5 seen; at 3 the order is right but the car stops low; 6 and 7 not reached. */
function checkZones(
  ask: BatchAsk,
  liftId: string,
  calloutId: string,
  person: { id: string; name: string },
): void {
  const started = ask("check.start", { liftId, planId: "zone-sensors", calloutId }, person);
  const { steps } = ask("check.find", { id: started.id }, null);
  for (const step of steps) {
    const landing = Number(step.landingMarking ?? "99");
    if (landing > 5) continue;
    ask(
      "check.recordStep",
      { checkId: started.id, stepKey: step.key, found: foundAt(step.expected, landing === 3) },
      person,
    );
  }
}

/** The order of the signals is right everywhere; at landing 3 the car stops 14 mm low. */
function foundAt(expected: Expected, isThird: boolean): Found {
  switch (expected.kind) {
    case "order":
      return { kind: "order", order: expected.order };
    case "state":
      return { kind: "state", on: expected.on };
    case "yes":
      return { kind: "yes", yes: true };
    case "value":
      return { kind: "value", value: isThird ? -14 : 1 };
  }
}

function saveZoneResult(
  ask: BatchAsk,
  liftId: string,
  landingId: string | null,
  person: { id: string; name: string },
): void {
  const { inputs } = ask("calculator.prefill", { id: "zone-sensors", liftId, landingId }, null);
  ask(
    "calculation.save",
    {
      calculatorId: "zone-sensors",
      liftId,
      landingId,
      inputs: {
        ...inputs,
        measured: "positions",
        centreUp: -0.011,
        centreDown: -0.023,
        sillDistance: -0.014,
      },
    },
    person,
  );
}
