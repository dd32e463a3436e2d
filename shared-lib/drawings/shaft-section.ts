import { signedNumber } from "./axis-steps.ts";

/** A landing as the shaft section needs it. Levels in metres above the reference landing, up positive. */
export interface ShaftLanding {
  readonly id: string;
  /** What is written at the landing: "0", "B1", "12". */
  readonly marking: string;
  readonly name: string;
  readonly levelMetres: number;
  readonly entrances: "front" | "rear" | "both";
  /** How far the zone magnet's middle was found above (+) or below (−) its nominal place; left out: not measured. */
  readonly magnetErrorMetres?: number;
}

export type ShaftDriveKind = "geared traction" | "gearless traction" | "machine-room-less" | "hydraulic";

/**
 * A lift as the shaft section draws it. `null` is "not recorded": the thing is then drawn without a dimension
 * and the drawing says so. Distances in metres, all positive.
 */
export interface ShaftSectionLift {
  readonly landings: readonly ShaftLanding[];
  readonly driveKind: ShaftDriveKind;
  /** 4:1 is written in words and drawn without ropes. */
  readonly roping: "1:1" | "2:1" | "4:1" | null;
  /** Pit floor below the lowest landing. */
  readonly pitDepthMetres: number | null;
  /** Underside of the well's roof above the highest landing. */
  readonly headroomMetres: number | null;
  /** Length of the zone magnet: from the site's drawing, there is no default. */
  readonly magnetLengthMetres: number | null;
  /** Vertical distance between the two zone sensors on the car, centre to centre. */
  readonly sensorSpacingMetres: number | null;
  /** How many zone sensors the car carries. */
  readonly zoneSensors: 1 | 2 | null;
  /** Car sill below the highest landing at which the up slowdown switch acts. */
  readonly upSlowdownMetres: number | null;
  /** Car sill above the lowest landing at which the down slowdown switch acts. */
  readonly downSlowdownMetres: number | null;
  /** Car sill above the highest landing at which the up final limit switch acts. */
  readonly upFinalMetres: number | null;
  /** Car sill below the lowest landing at which the down final limit switch acts. */
  readonly downFinalMetres: number | null;
  /** The landing panels' bus, drawn as one line through the panels; the terminator's landing where it is known. */
  readonly panelBus?: { readonly terminatorLandingId: string | null };
}

export type ShaftPart =
  | "zone-magnet"
  | "landing-door"
  | "landing-panel"
  | "switch"
  | "car"
  | "pit"
  | "machine";
export type ShaftSwitch = "up final" | "up slowdown" | "down slowdown" | "down final";

/** Something on the drawing that needs a person. `words` is the sentence that stands beside the same number. */
export interface ShaftMark {
  readonly id: string;
  readonly kind: "failed" | "open-fault" | "bridge" | "danger";
  readonly place: { readonly part: ShaftPart; readonly landingId?: string; readonly switch?: ShaftSwitch };
  readonly number: number;
  readonly words: string;
}

export type CheckState = "passed" | "failed" | "unchecked";

export interface LandingState {
  readonly zoneSignals: CheckState;
  readonly landingPanel: CheckState;
}

export type ShaftChoice =
  | { readonly kind: "mark"; readonly mark: ShaftMark }
  | { readonly kind: "landing"; readonly landingId: string }
  | {
      readonly kind: "part";
      readonly part: ShaftPart;
      readonly landingId?: string;
      readonly switch?: ShaftSwitch;
    };

export type SensorState = "on" | "off" | "unknown";

export interface ZoneSensorStates {
  readonly upper: SensorState;
  readonly lower: SensorState;
}

/** Levels come as metres with floating-point dust; a nanometre decides nothing. */
const dust = 1e-9;

/** Landings from the lowest to the highest; those without a usable level are left out. */
export function landingsByLevel(lift: ShaftSectionLift): ShaftLanding[] {
  return lift.landings
    .filter((landing) => Number.isFinite(landing.levelMetres))
    .sort((a, b) => a.levelMetres - b.levelMetres);
}

/**
 * Which zone sensors are on with the car sill at `carLevelMetres`. One magnet of length L stands at each landing,
 * the car carries the upper and the lower sensor S apart, their middle at the magnet's nominal middle when the
 * car is level. Upper on for x in [e − L/2 − S/2, e + L/2 − S/2], lower for x in [e − L/2 + S/2, e + L/2 + S/2],
 * x the car's place above the landing and e the magnet's error. A single sensor is the case S = 0 and is
 * given as `upper`, `lower` then stays unknown. Unknown wherever a dimension is not recorded.
 */
export function sensorsAt(lift: ShaftSectionLift, carLevelMetres: number): ZoneSensorStates {
  const length = lift.magnetLengthMetres;
  const spacing = lift.zoneSensors === 1 ? 0 : lift.sensorSpacingMetres;
  if (length === null || spacing === null || lift.zoneSensors === null || !Number.isFinite(carLevelMetres)) {
    return { upper: "unknown", lower: "unknown" };
  }
  const onWith = (shift: number): SensorState =>
    landingsByLevel(lift).some(
      (landing) =>
        Math.abs(carLevelMetres - landing.levelMetres - (landing.magnetErrorMetres ?? 0) + shift) <=
        length / 2 + dust,
    )
      ? "on"
      : "off";
  return { upper: onWith(spacing / 2), lower: lift.zoneSensors === 1 ? "unknown" : onWith(-spacing / 2) };
}

/** The levels at which terminal switches act, in metres, from the top down; those not recorded are left out. */
export function switchLevels(
  lift: ShaftSectionLift,
): { readonly switch: ShaftSwitch; readonly levelMetres: number }[] {
  const landings = landingsByLevel(lift);
  const lowest = landings[0]?.levelMetres;
  const highest = landings.at(-1)?.levelMetres;
  if (lowest === undefined || highest === undefined) return [];
  const found: { switch: ShaftSwitch; levelMetres: number }[] = [];
  const add = (name: ShaftSwitch, from: number, distance: number | null, sign: 1 | -1) => {
    if (distance !== null && Number.isFinite(distance))
      found.push({ switch: name, levelMetres: from + sign * distance });
  };
  add("up final", highest, lift.upFinalMetres, 1);
  add("up slowdown", highest, lift.upSlowdownMetres, -1);
  add("down slowdown", lowest, lift.downSlowdownMetres, 1);
  add("down final", lowest, lift.downFinalMetres, -1);
  return found;
}

/** Terminal switches that are actuated with the car at this level. */
export function switchesActuatedAt(lift: ShaftSectionLift, carLevelMetres: number): ShaftSwitch[] {
  return switchLevels(lift)
    .filter(({ switch: name, levelMetres }) =>
      name.startsWith("up") ? carLevelMetres >= levelMetres - dust : carLevelMetres <= levelMetres + dust,
    )
    .map(({ switch: name }) => name);
}

/** "+8.80", "±0.00", "−1.30": a level as it is written on a drawing, in metres. */
export function writtenLevel(levelMetres: number): string {
  return signedNumber(levelMetres, 2);
}

/** Half of the largest unlocking zone (EN 81-20:2020 5.3.8.1): nearer than this the car belongs to a landing. */
const nearLandingMetres = 0.35;

/** Where the car stands, in words: "landing 3", "30 mm above landing 3", "between landings 2 and 3". */
export function carPlaceWords(lift: ShaftSectionLift, carLevelMetres: number): string {
  const landings = landingsByLevel(lift);
  const near = nearestLanding(landings, carLevelMetres);
  if (!near) return "no landing recorded";
  const millimetres = Math.round((carLevelMetres - near.levelMetres) * 1000);
  if (millimetres === 0) return `landing ${near.marking}`;
  if (Math.abs(millimetres) <= nearLandingMetres * 1000) {
    return `${Math.abs(millimetres)} mm ${millimetres > 0 ? "above" : "below"} landing ${near.marking}`;
  }
  const below = landings.findLast((landing) => landing.levelMetres < carLevelMetres);
  const above = landings.find((landing) => landing.levelMetres > carLevelMetres);
  if (!below) return `below landing ${above?.marking ?? near.marking}`;
  if (!above) return `above landing ${below.marking}`;
  return `between landings ${below.marking} and ${above.marking}`;
}

export function nearestLanding(
  landings: readonly ShaftLanding[],
  levelMetres: number,
): ShaftLanding | undefined {
  let best: ShaftLanding | undefined;
  for (const landing of landings) {
    const nearer =
      best && Math.abs(landing.levelMetres - levelMetres) < Math.abs(best.levelMetres - levelMetres);
    if (!best || nearer) best = landing;
  }
  return best;
}

/** "upper on, lower off"; says what is missing where the states cannot be known. */
export function sensorWords(lift: ShaftSectionLift, states: ZoneSensorStates): string {
  if (states.upper === "unknown") return "zone sensors not known";
  return lift.zoneSensors === 1
    ? `zone sensor ${states.upper}`
    : `upper ${states.upper}, lower ${states.lower}`;
}

/** What a screen reader is told about the car: "+8.80 m, landing 3; upper on, lower on". */
export function carValueText(lift: ShaftSectionLift, carLevelMetres: number): string {
  const states = sensorsAt(lift, carLevelMetres);
  const switches = switchesActuatedAt(lift, carLevelMetres).map((name) => `; ${name} switch reached`);
  const level = `${writtenLevel(carLevelMetres)}\u00a0m`;
  return `${level}, ${carPlaceWords(lift, carLevelMetres)}; ${sensorWords(lift, states)}${switches.join("")}`;
}

/** Names of what the drawing has to leave out because nobody recorded it. */
export function notRecorded(lift: ShaftSectionLift): string[] {
  const hydraulic = lift.driveKind === "hydraulic";
  const entries: readonly (readonly [string, unknown])[] = [
    ["headroom", lift.headroomMetres],
    ["pit depth", lift.pitDepthMetres],
    [hydraulic ? "how the ram carries the car" : "roping", lift.roping],
    ["magnet length", lift.magnetLengthMetres],
    ["number of zone sensors", lift.zoneSensors],
    ["sensor spacing", lift.zoneSensors === 1 ? 0 : lift.sensorSpacingMetres],
    ["up slowdown", lift.upSlowdownMetres],
    ["down slowdown", lift.downSlowdownMetres],
    ["up final", lift.upFinalMetres],
    // A ram ends downward travel itself; hydraulic lifts commonly have no lower final limit switch to record.
    ["down final", hydraulic ? 0 : lift.downFinalMetres],
  ];
  return entries.filter(([, value]) => value === null).map(([name]) => name);
}
