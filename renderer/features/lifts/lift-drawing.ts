import type { Bridge } from "#shared-lib/contract/bridge.ts";
import type { Calculation } from "#shared-lib/contract/calculation.ts";
import type { Callout } from "#shared-lib/contract/callout.ts";
import type { Landing, Lift, Signal } from "#shared-lib/contract/lift.ts";
import type { OutputOf } from "#shared-lib/contract/operations.ts";
import type {
  LandingState,
  ShaftLanding,
  ShaftMark,
  ShaftPart,
  ShaftSectionLift,
} from "#shared-lib/drawings/shaft-section.ts";
import { bridgeAcross, type OpenStrip } from "../bridges/bridge-parts.ts";

export type CheckedPlace = OutputOf<"check.landingStates">["places"][number];
export type OpenCallout = Pick<Callout, "id" | "number" | "said" | "group" | "landingId" | "inside"> & {
  readonly peopleInside: boolean;
};

/** Something that needs a person, with the number of its triangle, and where it stands on the drawing if it does. */
export interface Concern {
  readonly id: string;
  readonly number: number;
  readonly kind: ShaftMark["kind"];
  readonly words: string;
  readonly landingId: string | null;
  readonly place: ShaftMark["place"] | null;
  readonly strip: OpenStrip | null;
  readonly checked: CheckedPlace | null;
  readonly callout: OpenCallout | null;
}

interface Recorded {
  readonly lift: Lift;
  readonly landings: readonly Landing[];
  readonly signals: readonly Signal[];
  readonly calculations: readonly Calculation[];
}

/** The lift as the shaft section draws it; what is not recorded stays null and is said below the drawing. */
export function sectionLiftOf({ lift, landings, signals, calculations }: Recorded): ShaftSectionLift {
  return {
    landings: landings.map((landing): ShaftLanding => {
      const error = zoneCentreOf(newestZoneResult(calculations, landing.id));
      return {
        id: landing.id,
        marking: landing.marking,
        name: landing.name,
        levelMetres: landing.level,
        entrances: landing.entrances,
        ...(error === null ? {} : { magnetErrorMetres: error }),
      };
    }),
    driveKind: lift.driveKind ?? "machine-room-less",
    roping: lift.roping,
    pitDepthMetres: lift.pitDepth,
    headroomMetres: lift.headroom,
    magnetLengthMetres: lift.magnetLength,
    sensorSpacingMetres: lift.sensorSpacing,
    zoneSensors: zoneSensorCount(lift, signals),
    upSlowdownMetres: lift.upSlowdownDistance,
    downSlowdownMetres: lift.downSlowdownDistance,
    upFinalMetres: lift.upFinalDistance,
    downFinalMetres: lift.downFinalDistance,
  };
}

/** The record has no number of sensors: a spacing, or signals of both roles, mean two; one role alone means one. */
function zoneSensorCount(lift: Lift, signals: readonly Signal[]): 1 | 2 | null {
  const upper = signals.some((signal) => signal.role === "upper zone sensor");
  const lower = signals.some((signal) => signal.role === "lower zone sensor");
  if (lift.sensorSpacing !== null || (upper && lower)) return 2;
  return upper || lower ? 1 : null;
}

export function newestZoneResult(
  calculations: readonly Calculation[],
  landingId: string,
): Calculation | null {
  return (
    calculations.find((one) => one.calculatorId === "zone-sensors" && one.landingId === landingId) ?? null
  );
}

/** Zone centre of a saved result in metres, up positive; null where it has none. */
export function zoneCentreOf(calculation: Calculation | null): number | null {
  const result = calculation?.result;
  if (result === null || typeof result !== "object" || Array.isArray(result)) return null;
  const values = (result as { readonly values?: unknown }).values;
  if (!Array.isArray(values)) return null;
  const centre = values.find(
    (one): one is { key: string; value: number } =>
      typeof one === "object" && one !== null && one.key === "centre" && typeof one.value === "number",
  );
  return centre?.value ?? null;
}

export function landingStatesOf(
  landings: readonly Landing[],
  places: readonly CheckedPlace[],
): Readonly<Record<string, LandingState>> {
  const verdict = (landingId: string, part: ShaftPart) =>
    places.find((one) => one.landingId === landingId && one.part === part)?.verdict ?? "unchecked";
  return Object.fromEntries(
    landings.map(({ id }) => [
      id,
      { zoneSignals: verdict(id, "zone-magnet"), landingPanel: verdict(id, "landing-panel") },
    ]),
  );
}

/** What needs a person, numbered as on the whole screen: dangers and bridges first, then failed checks, then callouts. */
export function concernsOf(input: {
  readonly landings: readonly Landing[];
  readonly strips: readonly OpenStrip[];
  readonly places: readonly CheckedPlace[];
  readonly callouts: readonly OpenCallout[];
}): readonly Concern[] {
  const { landings } = input;
  const ofStrips = input.strips.map((strip) => stripConcern(strip, landings));
  const ofChecks = input.places
    .filter((place) => place.verdict === "failed")
    .map((place) => checkConcern(place, landings));
  const ofCallouts = input.callouts.map((callout) => calloutConcern(callout, landings));
  return [...ofStrips, ...ofChecks, ...ofCallouts].map((concern, i) => ({ ...concern, number: i + 1 }));
}

/** The marks of the drawing: concerns that have a place on it. */
export function marksOf(concerns: readonly Concern[]): readonly ShaftMark[] {
  return concerns.flatMap(({ id, kind, number, words, place }) =>
    place === null ? [] : [{ id, kind, number, words, place }],
  );
}

type Unnumbered = Omit<Concern, "number">;
const nothingBehind = { strip: null, checked: null, callout: null };

function stripConcern(strip: OpenStrip, landings: readonly Landing[]): Unnumbered {
  if (strip.kind === "danger") {
    return {
      ...nothingBehind,
      id: strip.danger.id,
      kind: "danger",
      words: `Car door and landing door found bridged together: ${strip.danger.words}`,
      landingId: null,
      place: { part: "car" },
      strip,
    };
  }
  const { bridge } = strip;
  return {
    ...nothingBehind,
    id: bridge.id,
    kind: "bridge",
    words: `Bridge ${bridge.number} across ${bridgeAcross(bridge)}, ${bridge.points}`,
    landingId: bridge.landingId,
    place: placeOfContact(bridge, landings),
    strip,
  };
}

/** Where the contact is on the drawing; null where the register does not say which one it is. */
function placeOfContact(bridge: Bridge, landings: readonly Landing[]): ShaftMark["place"] | null {
  const { contact, landingId } = bridge;
  const at = landingId === null ? {} : { landingId };
  switch (contact) {
    case "landing door contact":
    case "landing door lock":
      return landingId === null ? null : { part: "landing-door", landingId };
    case "car door contact":
    case "safety gear contact":
    case "car-top stop switch":
    case "slack rope contact":
      return { part: "car" };
    case "final limit switch":
      return switchPlace(landingId, landings, "final");
    case "governor contact":
      return { part: "machine" };
    case "buffer contact":
    case "pit stop switch":
      return { part: "pit" };
    case "other contact of the chain":
      return landingId === null ? null : { part: "landing-door", ...at };
  }
}

/** A switch belongs to the upper or the lower end of the well by its terminal landing. */
function switchPlace(
  landingId: string | null,
  landings: readonly Landing[],
  kind: "final" | "slowdown",
): ShaftMark["place"] | null {
  const sorted = [...landings].sort((a, b) => a.level - b.level);
  if (landingId !== null && sorted.at(-1)?.id === landingId)
    return { part: "switch", landingId, switch: `up ${kind}` };
  if (landingId !== null && sorted[0]?.id === landingId)
    return { part: "switch", landingId, switch: `down ${kind}` };
  return null;
}

const partWords: Readonly<Record<ShaftPart, string>> = {
  "zone-magnet": "Zone signal",
  "landing-door": "Door contact",
  "landing-panel": "Landing panel",
  switch: "Terminal switch",
  car: "Car",
  pit: "Pit",
  machine: "Machine",
};

function checkConcern(checked: CheckedPlace, landings: readonly Landing[]): Unnumbered {
  const { landingId, part } = checked;
  const landing = landings.find((one) => one.id === landingId);
  const where = landing === undefined ? "" : ` at landing ${landing.marking}`;
  const place =
    part === "switch"
      ? switchPlace(landingId, landings, "slowdown")
      : { part, ...(landingId === null ? {} : { landingId }) };
  return {
    ...nothingBehind,
    id: `check ${part} ${landingId ?? ""}`,
    kind: "failed",
    words: `${partWords[part]} failed${where}`,
    landingId,
    place,
    checked,
  };
}

function calloutConcern(callout: OpenCallout, landings: readonly Landing[]): Unnumbered {
  return {
    ...nothingBehind,
    id: callout.id,
    kind: "open-fault",
    words: `Callout ${callout.number}: “${callout.said}”`,
    landingId: callout.landingId,
    place: placeOfCallout(callout, landings),
    callout,
  };
}

function placeOfCallout(callout: OpenCallout, landings: readonly Landing[]): ShaftMark["place"] | null {
  if (callout.peopleInside) return { part: "car" };
  const landing = landings.find((one) => one.id === callout.landingId);
  if (landing !== undefined) return { part: partAtLanding(callout.group), landingId: landing.id };
  const part = partOfGroup[callout.group];
  return part === undefined ? null : { part };
}

function partAtLanding(group: OpenCallout["group"]): ShaftPart {
  if (group === "position and zone sensing") return "zone-magnet";
  if (group === "landing and car panels" || group === "panel bus and cabling") return "landing-panel";
  return "landing-door";
}

const partOfGroup: Readonly<Partial<Record<OpenCallout["group"], ShaftPart>>> = {
  "drive and motor": "machine",
  brake: "machine",
  "suspension and traction": "machine",
  "governor and safety gear": "machine",
  "buffers, pit and shaft": "pit",
  "car, lighting, ventilation": "car",
  "door operator": "car",
  "alarm and rescue": "car",
};

/** The newest result of a landing before the newest one whose zone centre differs by a millimetre or more. */
export function earlierZoneResult(
  calculations: readonly Calculation[],
  landingId: string,
): Calculation | null {
  const newest = newestZoneResult(calculations, landingId);
  const centre = zoneCentreOf(newest);
  if (newest === null || centre === null) return null;
  const before = calculations.filter(
    (one) => one.calculatorId === "zone-sensors" && one.landingId === landingId && one.id !== newest.id,
  );
  return (
    before.find((one) => {
      const other = zoneCentreOf(one);
      return other !== null && Math.abs(other - centre) >= 0.001;
    }) ?? null
  );
}
