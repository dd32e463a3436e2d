import type { Expected, PlanStep } from "../contract/check.ts";
import {
  type CheckedLift,
  type CheckPlan,
  cautions,
  fromMemory,
  inputWords,
  wholeLift,
} from "./check-plan.ts";

const inspection = fromMemory("5.12.1.5.2");
const emergencyElectrical = fromMemory("5.12.1.6");

type Part = PlanStep["part"];

function ask(
  key: string,
  part: Part,
  title: string,
  how: string,
  question: string,
  source: string = inspection,
): PlanStep {
  return {
    key,
    title,
    how,
    caution: part === "pit" ? cautions.pit : cautions.carTop,
    ...wholeLift,
    part,
    expected: { kind: "yes", question },
    source,
    searchWords: "inspection control does not move or does not stop the car",
  };
}

const speedLimit = (most: number): Expected => ({
  kind: "value",
  unit: "m/s",
  least: null,
  most,
  source: inspection,
});

function speed(key: string, title: string, how: string, most: number): PlanStep {
  return { ...ask(key, "car", title, how, ""), expected: speedLimit(most) };
}

/** What a person on the car top can prove. */
function carTopSteps(signals: CheckedLift["signals"]): PlanStep[] {
  return [
    ask(
      "stop-switch",
      "car",
      "The stop switch on the car top stops and holds the car",
      "Before anybody steps on: press the stop switch from the landing, close the landing door, let a second person call the lift. Only where nothing moves go on the car top; in mid travel with inspection on and the stop switch pressed try both directions, up first.",
      "Does the car stay still each time?",
    ),
    ask(
      "normal-cancelled",
      "car",
      "Inspection control cancels normal control and automatic doors",
      `Switch inspection on, then call the lift from a landing.${inputWords(signals, "inspection switch")}`,
      "Is the call left unanswered, and do the doors stay as they are?",
    ),
    ask(
      "continuous-pressure",
      "car",
      "The car moves only while both buttons are held",
      `Press the direction button alone, the safety button alone, then both; let go of each in turn, up and down.${inputWords(signals, "inspection up")}${inputWords(signals, "inspection down")}`,
      "Does the car move only while both are held, and stop when either is let go?",
    ),
    speed(
      "speed",
      "Speed on inspection control",
      "Measure the speed in the middle of the travel, up and down; note the higher one.",
      0.63,
    ),
    speed(
      "speed-near-ends",
      "Speed on inspection control near the ends",
      "From the car top station with nobody in the pit, a second person reads the speed at the controller. Up: where 2.0 m or less of clear height remains above the standing area on the car top, you in the refuge space. Down: where 2.0 m or less remains above the pit floor. Note the higher one.",
      0.3,
    ),
    ask(
      "normal-limits",
      "car",
      "The car does not pass its normal limits of travel",
      "Nobody in the pit, you in the refuge space with a hand on the stop switch. Move the car to the top and to the bottom landing on inspection control; stop it where it passes its landing.",
      "Does it stop at the limits of normal travel at both ends?",
    ),
  ];
}

/** The station in the pit, proved as the one on the car top; the car is moved away from the person before towards. */
function pitStationSteps(): PlanStep[] {
  return [
    ask(
      "pit-station-buttons",
      "pit",
      "From the pit station the car moves only while both buttons are held",
      "Only after the pit stop switches are proved; nobody on the car top. First read every button at the controller with the stop switch pressed. Then, car in mid travel, from beside the refuge space, a hand on the stop switch: each button alone, both, let go of each; up first, down only briefly. Leave unchecked where the pit has no station.",
      "Does the car move only while both are held, in the direction marked, and stop when either is let go?",
    ),
    {
      ...speed(
        "pit-station-speed",
        "Speed from the pit station near the pit",
        "By the maker's procedure; otherwise only upwards: car at the lowest landing, you in the refuge space, nobody on the car top. A second person reads the speed at the controller while 2.0 m or less of clear height remains above the pit floor. Leave unchecked where the pit has no station.",
        0.3,
      ),
      part: "pit",
      caution: cautions.pit,
    },
  ];
}

/** How the stations give way to one another, and how normal control returns. */
function prioritySteps(signals: CheckedLift["signals"]): PlanStep[] {
  return [
    ask(
      "emergency-electrical-off",
      "machine",
      "Inspection control switches emergency electrical operation off",
      `By the maker's procedure with nobody on the car top if it gives one. Otherwise car in mid travel, the person on the car top clear of all edges with a hand on the stop switch. With inspection on, a second person tries a short move up by emergency electrical operation; stop at once if it moves.${inputWords(signals, "emergency electrical switch")}`,
      "Does the car stay still?",
      emergencyElectrical,
    ),
    ask(
      "two-stations",
      "pit",
      "Two inspection stations on: no movement from one alone",
      "Only after the stop switches are proved. Car in mid travel; switch both stations on. Leave the pit; try the car top station alone, upwards and briefly, a hand on its stop switch. Then leave the car top, its station still on; from beside the refuge space in the pit try that station alone, upwards and briefly. Leave unchecked where there is only one.",
      "Does the car stay still when one station alone is used?",
    ),
    ask(
      "pit-stop",
      "pit",
      "The stop switches in the pit stop and hold the car",
      "For each stop switch in turn: press it, leave the pit, close its access. Only with nobody in the pit try to move the car, upwards only, from outside the well or on inspection control from the car top.",
      "Does the car stay still with each of them?",
    ),
    ask(
      "pit-return",
      "pit",
      "After pit inspection the lift returns to normal only by the reset outside the well",
      "Switch pit inspection off, release a lower stop switch on leaving the pit and the one at the access from the landing, close and lock the access, nobody in the shaft. Call the lift before the reset is operated, and again after it. Leave unchecked where the pit has no station.",
      "Does the lift stay out of normal control until the reset outside the well is operated?",
    ),
    ask(
      "return-to-normal",
      "car",
      "Normal control returns only when inspection is switched off",
      "Leave the car top with inspection still on, close the doors, call the lift; then switch inspection off as the maker says.",
      "Is the call answered only after inspection was switched off?",
    ),
  ];
}

/** The stop switches in the pit are proved before anybody moves the car from there. */
function stepsInOrder(signals: CheckedLift["signals"]): PlanStep[] {
  const priority = prioritySteps(signals);
  const pitStop = priority.filter(({ key }) => key === "pit-stop");
  const others = priority.filter(({ key }) => key !== "pit-stop");
  return [...carTopSteps(signals), ...pitStop, ...pitStationSteps(), ...others];
}

export const inspectionControlsPlan: CheckPlan = {
  id: "inspection-controls",
  name: "Inspection and emergency electrical controls",
  purpose:
    "Proves that inspection control takes over alone, stops when let go, and gives the lift back only when it is switched off.",
  cautions: [
    "Two people who can hear each other; only the one on inspection control moves the car.",
    "Nobody is in the pit while the car is moved from the car top, and nobody on the car top while it is moved from the pit.",
    "The limits are those of EN 81-20:2020. A lift built to an earlier standard may have no pit station, no second button and another speed: it is judged by what it was built to.",
    cautions.carTop,
    cautions.pit,
    cautions.decide,
  ],
  steps: ({ signals }) => stepsInOrder(signals),
};
