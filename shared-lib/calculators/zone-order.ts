/** The four edges of the two zone signals. */
export type ZoneEdge = "upperOn" | "lowerOn" | "upperOff" | "lowerOff";
export type Direction = "up" | "down";
export type SensorPlace = "car" | "well";

export const edgeWords: Readonly<Record<ZoneEdge, string>> = {
  upperOn: "upper on",
  lowerOn: "lower on",
  upperOff: "upper off",
  lowerOff: "lower off",
};

/** What one run past a landing shows. */
export type RunKind =
  | "not run"
  | "nothing"
  | "right"
  | "reversed"
  | "upper only"
  | "lower only"
  | "repeated"
  | "gap"
  | "broken";

export const runWords: Readonly<Record<RunKind, string>> = {
  "not run": "not run",
  nothing: "neither signal seen",
  right: "in order",
  reversed: "reversed",
  "upper only": "only the upper seen",
  "lower only": "only the lower seen",
  repeated: "an edge came more than once",
  gap: "no overlap",
  broken: "not in order",
};

const upperFirst: readonly ZoneEdge[] = ["upperOn", "lowerOn", "upperOff", "lowerOff"];
const lowerFirst: readonly ZoneEdge[] = ["lowerOn", "upperOn", "lowerOff", "upperOff"];
const separate: readonly (readonly ZoneEdge[])[] = [
  ["upperOn", "upperOff", "lowerOn", "lowerOff"],
  ["lowerOn", "lowerOff", "upperOn", "upperOff"],
];

const same = (one: readonly ZoneEdge[], other: readonly ZoneEdge[]): boolean => one.join() === other.join();

/**
 * Order of the edges when all is right. Sensors on the car, up: upper on, lower on, upper off, lower off; down:
 * lower on, upper on, lower off, upper off. Sensors in the well and magnet on the car: the two orders swap.
 */
export function expectedOrder(direction: Direction, sensorsOn: SensorPlace): readonly ZoneEdge[] {
  return (direction === "up") === (sensorsOn === "car") ? upperFirst : lowerFirst;
}

/** @param seen edges as they came; undefined where that direction was not run */
export function readRun(
  seen: readonly ZoneEdge[] | undefined,
  direction: Direction,
  sensorsOn: SensorPlace,
): RunKind {
  if (seen === undefined) return "not run";
  if (seen.length === 0) return "nothing";
  if (new Set(seen).size < seen.length) return "repeated";
  if (seen.every((edge) => edge.startsWith("upper"))) return "upper only";
  if (seen.every((edge) => edge.startsWith("lower"))) return "lower only";
  if (separate.some((order) => same(order, seen))) return "gap";
  const expected = expectedOrder(direction, sensorsOn);
  if (same(expected, seen)) return "right";
  return same(expected === upperFirst ? lowerFirst : upperFirst, seen) ? "reversed" : "broken";
}
