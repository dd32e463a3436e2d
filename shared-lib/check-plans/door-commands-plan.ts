import type { Expected, PlanStep } from "../contract/check.ts";
import type { Landing, Lift, Signal } from "../contract/lift.ts";
import {
  atLanding,
  type CheckedLift,
  type CheckPlan,
  cautions,
  fromBelow,
  fromMemory,
  inputWords,
  noSource,
  wholeLift,
} from "./check-plan.ts";

type Side = "front" | "rear";

const closingSource = "EN 81-20:2020, 5.3.6.2.2.1 (from notes on the clause, compare the current text)";
const monitoringSource = fromMemory("5.12.1.9");
const searchWords = "doors do not close or reopen, door contact";

export const sidesOf = (landing: Landing): readonly Side[] =>
  landing.entrances === "both" ? ["front", "rear"] : [landing.entrances];

/** " front" only where a landing has two entrances: elsewhere the word tells nothing. */
function sideWord(landings: readonly Landing[], side: Side): string {
  const oneSide = new Set(landings.flatMap(sidesOf)).size <= 1;
  return oneSide ? "" : ` ${side}`;
}

interface Entrance {
  readonly landing: Landing;
  readonly side: Side;
  readonly words: string;
  readonly signals: readonly Signal[];
}

function contactStep(
  { landing, side, words, signals }: Entrance,
  key: string,
  title: string,
  how: string,
  role: Signal["role"],
  expected: Expected,
): PlanStep {
  return {
    key: `door-${key}-${landing.id}-${side}`,
    title: `${title}, landing ${landing.marking}${words}`,
    how: `${how}${inputWords(signals, role, landing.id)}`,
    caution: cautions.landing,
    ...atLanding(landing),
    part: "landing-door",
    expected,
    source: noSource,
    searchWords,
  };
}

const on: Expected = { kind: "state", on: true };
const off: Expected = { kind: "state", on: false };

type MakeStep = (
  key: string,
  title: string,
  how: string,
  role: Signal["role"],
  expected: Expected,
) => PlanStep;

function commandSteps(entrance: Entrance): PlanStep[] {
  const make: MakeStep = (key, title, how, role, expected) =>
    contactStep(entrance, key, title, how, role, expected);
  return [...openSteps(make), ...closeSteps(make)];
}

function openSteps(make: MakeStep): PlanStep[] {
  return [
    make(
      "open-limit",
      "Open command: door open limit",
      "With the car level, give the open command and wait until the door stands still.",
      "door open limit",
      on,
    ),
    make(
      "car-contact-open",
      "Door open: car door contact",
      "Read the contact while the door stands open.",
      "car door contact",
      off,
    ),
    make(
      "landing-contact-open",
      "Door open: landing door contact",
      "Read the contact while the door stands open.",
      "landing door contact",
      off,
    ),
  ];
}

function closeSteps(make: MakeStep): PlanStep[] {
  return [
    make(
      "close-limit",
      "Close command: door close limit",
      "Give the close command and wait until the door stands still.",
      "door close limit",
      on,
    ),
    make(
      "car-contact-closed",
      "Door closed: car door contact",
      "Read the contact with the door closed.",
      "car door contact",
      on,
    ),
    make(
      "landing-contact-closed",
      "Door closed: landing door contact",
      "Read the contact with the door closed and locked.",
      "landing door contact",
      on,
    ),
    {
      ...make(
        "reversal",
        "The reversal device reopens the closing door",
        "While the door closes, hold a test piece of 50 mm into its way, foam or card on a stick and never a hand or arm: low, at half height and high, between 25 and 1600 mm above the sill.",
        "door reversal device",
        {
          kind: "yes",
          question: "Does the door reopen each time?",
        },
      ),
      source: closingSource,
    },
  ];
}

/** A hinged landing door is opened by hand: there is no command, but its contact and lock answer all the same. */
function hingedSteps(entrance: Entrance): PlanStep[] {
  return [
    contactStep(
      entrance,
      "landing-contact-open",
      "Door open: landing door contact",
      "With the car level, open the door by hand and read the contact.",
      "landing door contact",
      off,
    ),
    contactStep(
      entrance,
      "landing-contact-closed",
      "Door closed and locked: landing door contact",
      "Close the door, let it lock, and read the contact.",
      "landing door contact",
      on,
    ),
  ];
}

function stepsOf(lift: Lift, entrance: Entrance): PlanStep[] {
  return lift.doorKind === "hinged" ? hingedSteps(entrance) : commandSteps(entrance);
}

const monitoring: PlanStep = {
  key: "door-monitoring",
  title: "The control checks the door contacts by itself",
  how: "With the car level, its door open and the landing door lock released, watch as the maker describes that the control checks the car door contact and the landing lock contact.",
  caution: "No contact is linked to provoke the fault: the maker's own test decides how this is proved.",
  ...wholeLift,
  part: "car",
  expected: { kind: "yes", question: "Does the control carry out its check, and is no fault shown?" },
  source: monitoringSource,
  searchWords: "door contact monitoring blocks the lift",
};

export const doorCommandsPlan: CheckPlan = {
  id: "door-commands",
  name: "Door commands and what answers them",
  purpose:
    "Proves at each entrance that the door does what it is told and that its contacts and limits say so.",
  cautions: [
    "Keep hands and clothing away from moving panels and from the door operator.",
    cautions.landing,
    "Car and landing door contacts are never linked, neither one nor both.",
    cautions.decide,
  ],
  steps: ({ lift, landings, signals }: CheckedLift) => {
    const steps = fromBelow(landings).flatMap((landing) =>
      sidesOf(landing).flatMap((side) =>
        stepsOf(lift, { landing, side, words: sideWord(landings, side), signals }),
      ),
    );
    return steps.length === 0 ? [] : [...steps, monitoring];
  },
};
