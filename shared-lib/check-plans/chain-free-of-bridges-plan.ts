import type { Expected, PlanStep } from "../contract/check.ts";
import {
  atLanding,
  type CheckedLift,
  type CheckPlan,
  cautions,
  fromBelow,
  fromMemory,
  noSource,
  wholeLift,
} from "./check-plan.ts";
import { sidesOf } from "./door-commands-plan.ts";

type Part = PlanStep["part"];

const leadsSource =
  "public directives on temporary links (Technical Safety BC, D-ED 2014-02; SafeWork SA, alert of 6 January 2023): all removed and accounted for before return to service";
const opens: Expected = { kind: "state", on: false };

function look(
  key: string,
  part: Part,
  title: string,
  how: string,
  question: string,
  source: string,
): PlanStep {
  return {
    key,
    title,
    how,
    caution: "Isolate and lock off before covers are opened; prove dead before anything is touched.",
    ...wholeLift,
    part,
    expected: { kind: "yes", question },
    source,
    searchWords: "link left in the safety chain",
  };
}

function contact(key: string, part: Part, title: string, how: string, caution: string): PlanStep {
  return {
    key: `chain-${key}`,
    title: `${title} opens the chain`,
    how: `${how} Read the chain while it is so, then set it right again.`,
    caution: `${caution} ${cautions.chain}`,
    ...wholeLift,
    part,
    expected: opens,
    source: noSource,
    searchWords: "safety chain contact does not open the chain",
  };
}

const looks: readonly PlanStep[] = [
  look(
    "register-compared",
    "machine",
    "The bridge register compared with the shaft",
    "Go through every open and every removed bridge of the register and look at its place.",
    "Is every bridge of the register out, and none found that is not in it?",
    `${leadsSource}; what the register records`,
  ),
  look(
    "leads-counted",
    "machine",
    "All numbered leads are back",
    "Count the leads of the kit by their numbers.",
    "Are all of them there?",
    leadsSource,
  ),
  look(
    "terminals-looked-at",
    "machine",
    "No link at the terminals of the chain",
    "With the controller isolated, look at every terminal of the chain on the site's drawing, also behind covers and on the car.",
    "Is there no link that the drawing does not show?",
    noSource,
  ),
  look(
    "bypass-off",
    "machine",
    "The door bypass stands off",
    "Look at the bypass for landing and car doors in the controller or emergency panel. Leave unchecked where there is none.",
    "Does it stand off, and is it marked and protected?",
    fromMemory("5.12.1.8"),
  ),
];

function landingDoors({ landings }: CheckedLift): PlanStep[] {
  return fromBelow(landings).flatMap((landing) =>
    sidesOf(landing).map((side) => ({
      ...contact(
        `landing-door-${landing.id}-${side}`,
        "landing-door",
        `Landing door ${landing.marking}${landing.entrances === "both" ? ` ${side}` : ""}`,
        "From the landing, unlock the door with the emergency key while the lift is held still, and let it stand slightly open.",
        `${cautions.landing} Weight back, a hand on the frame, nobody leans into the shaft; close it and prove it locked.`,
      ),
      ...atLanding(landing),
    })),
  );
}

function otherContacts(checked: CheckedLift): PlanStep[] {
  const suspended = checked.lift.driveKind !== "hydraulic";
  return [
    contact(
      "car-door",
      "car",
      "The car door",
      "With the car level and held still, open the car door by hand.",
      cautions.landing,
    ),
    contact("car-top-stop", "car", "The stop switch on the car top", "Press it.", cautions.carTop),
    contact("pit-stop", "pit", "The stop switch in the pit", "Press it.", cautions.pit),
    ...(suspended
      ? [
          contact(
            "governor",
            "machine",
            "The governor contact",
            "Operate the contact by hand as the maker says, with the car held still.",
            "Only people competent for governors touch it.",
          ),
          contact(
            "safety-gear",
            "car",
            "The safety gear contact",
            "Operate the contact by hand as the maker says, with the car held still.",
            "Only people competent for safety gears touch it.",
          ),
        ]
      : []),
    ...finalSwitches(checked),
  ];
}

function finalSwitches({ lift, landings }: CheckedLift): PlanStep[] {
  const ordered = fromBelow(landings);
  const [bottom, top] = [ordered.at(0), ordered.at(-1)];
  return [
    ...(top
      ? [
          {
            ...contact(
              "final-up",
              "switch",
              "The upper final switch",
              "Operate it by hand with the car held still.",
              cautions.carTop,
            ),
            ...atLanding(top),
          },
        ]
      : []),
    ...(bottom && lift.driveKind !== "hydraulic"
      ? [
          {
            ...contact(
              "final-down",
              "switch",
              "The lower final switch",
              "Operate it by hand with the car held still.",
              cautions.pit,
            ),
            ...atLanding(bottom),
          },
        ]
      : []),
  ];
}

const monitoring: PlanStep = {
  ...look(
    "door-monitoring-passed",
    "car",
    "Door contact monitoring passes",
    "With the car level, its door open and the landing door lock released, let the control check the door contacts as the maker describes.",
    "Is the check passed?",
    fromMemory("5.12.1.9"),
  ),
  caution: "No contact is linked to provoke the fault: the maker's own test decides how this is proved.",
};

export const chainFreeOfBridgesPlan: CheckPlan = {
  id: "chain-free-of-bridges",
  name: "Safety chain free of bridges",
  purpose: "Compares the register with the shaft and proves that each contact opens the chain again.",
  cautions: [
    "A link found across car and landing door together is a danger: record it at once, nothing else goes on.",
    "No bridge is set for this check.",
    cautions.carTop,
    cautions.pit,
    cautions.decide,
  ],
  steps: (checked) => [...looks, ...landingDoors(checked), ...otherContacts(checked), monitoring],
};
