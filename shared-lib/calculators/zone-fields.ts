import type { Condition, NumberField } from "./field.ts";
import type { Direction, ZoneEdge } from "./zone-order.ts";

const byPositions: Condition = { field: "measured", is: ["positions"] };
const byEdges: Condition = { field: "measured", is: ["edges"] };
const byTimes: Condition = { field: "measured", is: ["times"] };
const byNumbers: Condition = { field: "measured", is: ["positions", "edges", "times"] };
const byRuns: Condition = { field: "measured", is: ["edges", "times", "order"] };

const edgeItems = [
  { id: "upperOn", words: "upper on" },
  { id: "lowerOn", words: "lower on" },
  { id: "upperOff", words: "upper off" },
  { id: "lowerOff", words: "lower off" },
] as const;

const edgeNames = {
  upperOn: "Upper on",
  upperOff: "Upper off",
  lowerOn: "Lower on",
  lowerOff: "Lower off",
} as const;

type EdgeSuffix = "UpperOn" | "UpperOff" | "LowerOn" | "LowerOff";
const suffixOf = (edge: ZoneEdge): EdgeSuffix =>
  `${edge.charAt(0).toUpperCase()}${edge.slice(1)}` as EdgeSuffix;

/** Field key of an edge position, as in "upUpperOn". */
export const positionKey = (direction: Direction, edge: ZoneEdge): `${Direction}${EdgeSuffix}` =>
  `${direction}${suffixOf(edge)}`;
/** Field key of an edge time, as in "upUpperOnTime". */
export const timeKey = (direction: Direction, edge: ZoneEdge): `${Direction}${EdgeSuffix}Time` =>
  `${direction}${suffixOf(edge)}Time`;

function edgePosition<const D extends Direction, const E extends keyof typeof edgeNames>(
  direction: D,
  edge: E,
) {
  return {
    kind: "number",
    key: `${direction}${edgeKeys[edge]}` as `${D}${(typeof edgeKeys)[E]}`,
    label: `${edgeNames[edge]}, moving ${direction}`,
    group: direction === "up" ? "Moving up" : "Moving down",
    optional: true,
    quantity: "length",
    unit: "mm",
    range: [-3, 3],
    step: 0.001,
    digits: 0,
    shownWhen: byEdges,
  } as const satisfies NumberField;
}

const edgeKeys = {
  upperOn: "UpperOn",
  upperOff: "UpperOff",
  lowerOn: "LowerOn",
  lowerOff: "LowerOff",
} as const;

function edgeTime<const D extends Direction, const E extends keyof typeof edgeNames>(direction: D, edge: E) {
  return {
    kind: "number",
    key: `${direction}${edgeKeys[edge]}Time` as `${D}${(typeof edgeKeys)[E]}Time`,
    label: `${edgeNames[edge]}, moving ${direction}`,
    group: direction === "up" ? "Moving up" : "Moving down",
    optional: true,
    quantity: "time",
    unit: "ms",
    range: [-3600, 3600],
    step: 0.001,
    digits: 0,
    shownWhen: byTimes,
  } as const satisfies NumberField;
}

function levelTime<const D extends Direction>(direction: D) {
  return {
    kind: "number",
    key: `${direction}LevelTime` as `${D}LevelTime`,
    label: `Passing the level, moving ${direction}`,
    help: "With it the centre and the signal delay can be told, without it only length and spacing.",
    group: direction === "up" ? "Moving up" : "Moving down",
    optional: true,
    quantity: "time",
    unit: "ms",
    range: [-3600, 3600],
    step: 0.001,
    digits: 0,
    shownWhen: byTimes,
  } as const satisfies NumberField;
}

function zoneCentre<const K extends string>(key: K, label: string) {
  return {
    kind: "number",
    key,
    label,
    help: "Middle of the zone in car positions, up positive; middle of both signals or of either.",
    optional: true,
    quantity: "length",
    unit: "mm",
    range: [-2, 2],
    step: 0.001,
    digits: 0,
    shownWhen: byPositions,
  } as const satisfies NumberField;
}

function runOrder<const K extends string>(key: K, label: string) {
  return {
    kind: "order",
    key,
    label,
    help: "Edges as they came. Leave it empty where that direction was not run.",
    optional: true,
    items: edgeItems,
    longest: 12,
    shownWhen: { field: "measured", is: ["order"] },
  } as const;
}

/** Everything that can be entered about two zone sensors at one landing. */
export const zoneFields = [
  {
    kind: "choice",
    key: "measured",
    label: "What was measured",
    optional: false,
    options: [
      { id: "positions", words: "Zone centre" },
      { id: "edges", words: "Edge positions" },
      { id: "times", words: "Edge times" },
      { id: "order", words: "Order only" },
    ],
    start: "positions",
  },
  {
    kind: "text",
    key: "landing",
    label: "Landing",
    optional: true,
    longest: 40,
    prefilledFrom: "landing.marking",
  },
  {
    kind: "choice",
    key: "sensorsOn",
    label: "Sensors",
    optional: false,
    options: [
      { id: "car", words: "on the car" },
      { id: "well", words: "in the well" },
    ],
    start: "car",
  },
  {
    kind: "number",
    key: "magnetLength",
    label: "Magnet length",
    help: "From the site's drawing; there is no usual value to rely on.",
    optional: true,
    neededWhen: byPositions,
    quantity: "length",
    unit: "mm",
    range: [0.02, 2],
    step: 0.005,
    digits: 0,
    prefilledFrom: "lift.magnetLength",
    shownWhen: byNumbers,
  },
  {
    kind: "number",
    key: "sensorSpacing",
    label: "Sensor spacing",
    help: "Middle of the upper sensor to middle of the lower one.",
    optional: true,
    neededWhen: byPositions,
    quantity: "length",
    unit: "mm",
    range: [0, 2],
    step: 0.005,
    digits: 0,
    prefilledFrom: "lift.sensorSpacing",
    shownWhen: byNumbers,
  },
  zoneCentre("centreUp", "Zone centre, up"),
  zoneCentre("centreDown", "Zone centre, down"),
  edgePosition("up", "upperOn"),
  edgePosition("up", "upperOff"),
  edgePosition("up", "lowerOn"),
  edgePosition("up", "lowerOff"),
  edgePosition("down", "upperOn"),
  edgePosition("down", "upperOff"),
  edgePosition("down", "lowerOn"),
  edgePosition("down", "lowerOff"),
  edgeTime("up", "upperOn"),
  edgeTime("up", "upperOff"),
  edgeTime("up", "lowerOn"),
  edgeTime("up", "lowerOff"),
  levelTime("up"),
  edgeTime("down", "upperOn"),
  edgeTime("down", "upperOff"),
  edgeTime("down", "lowerOn"),
  edgeTime("down", "lowerOff"),
  levelTime("down"),
  runOrder("orderUp", "Order, moving up"),
  runOrder("orderDown", "Order, moving down"),
  {
    kind: "choice",
    key: "seenAt",
    label: "The same at",
    optional: false,
    options: [
      { id: "unknown", words: "others not checked" },
      { id: "here", words: "this landing only" },
      { id: "everywhere", words: "every landing" },
    ],
    start: "unknown",
    shownWhen: byRuns,
  },
  {
    kind: "choice",
    key: "countDirection",
    label: "Position count",
    optional: false,
    options: [
      { id: "unknown", words: "not compared" },
      { id: "with", words: "goes with the car" },
      { id: "against", words: "goes against the car" },
    ],
    start: "unknown",
    shownWhen: byRuns,
  },
  {
    kind: "number",
    key: "speed",
    label: "Check speed",
    help: "Constant while the car passes the magnet; for the signal delay.",
    optional: true,
    neededWhen: byTimes,
    quantity: "speed",
    unit: "m/s",
    range: [0.01, 20],
    step: 0.05,
    digits: 2,
    shownWhen: byNumbers,
  },
  {
    kind: "number",
    key: "ratedSpeed",
    label: "Rated speed of the lift",
    optional: true,
    quantity: "speed",
    unit: "m/s",
    range: [0.05, 20],
    step: 0.05,
    digits: 2,
    prefilledFrom: "lift.ratedSpeed",
    shownWhen: byNumbers,
  },
  {
    kind: "number",
    key: "zoneTolerance",
    label: "Site's own tolerance",
    help: "For the zone centre, from the site's drawing; the standard has none.",
    optional: true,
    quantity: "length",
    unit: "mm",
    range: [0.0005, 0.1],
    step: 0.001,
    digits: 0,
    plusMinus: true,
    prefilledFrom: "lift.zoneTolerance",
    shownWhen: byNumbers,
  },
  {
    kind: "choice",
    key: "unlockingZone",
    label: "Unlocking zone limit",
    help: "±350 mm only where mechanically driven car and landing doors open together.",
    optional: true,
    options: [
      { id: "200", words: "± 200 mm", recorded: 0.2 },
      { id: "350", words: "± 350 mm", recorded: 0.35 },
    ],
    prefilledFrom: "lift.unlockingZone",
    shownWhen: byNumbers,
  },
  {
    kind: "choice",
    key: "unlockNeeds",
    label: "Signals needed to unlock",
    optional: true,
    options: [
      { id: "either", words: "either" },
      { id: "both", words: "both" },
    ],
    prefilledFrom: "lift.unlockNeeds",
    shownWhen: byNumbers,
  },
  {
    kind: "number",
    key: "sillDistance",
    label: "Car sill to landing sill, measured",
    help: "Car stopped here by the control, doors fully open; car sill higher is positive.",
    optional: true,
    quantity: "length",
    unit: "mm",
    range: [-0.5, 0.5],
    step: 0.001,
    digits: 0,
    shownWhen: byNumbers,
  },
  {
    kind: "number",
    key: "othersChecked",
    label: "Other landings checked",
    optional: true,
    quantity: "count",
    unit: "pieces",
    range: [0, 300],
    step: 1,
    digits: 0,
    whole: true,
    prefilledFrom: "checks.otherLandings",
    shownWhen: byNumbers,
  },
  {
    kind: "number",
    key: "othersLargest",
    label: "Largest zone centre of the others",
    help: "Without sign: how far the worst of them is off.",
    optional: true,
    quantity: "length",
    unit: "mm",
    range: [0, 2],
    step: 0.001,
    digits: 0,
    prefilledFrom: "checks.largestOtherCentre",
    shownWhen: byNumbers,
  },
] as const;
