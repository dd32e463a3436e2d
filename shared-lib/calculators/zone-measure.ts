import type { Problem } from "./result.ts";
import { type Direction, expectedOrder, type SensorPlace, type ZoneEdge } from "./zone-order.ts";

/** Car positions, m, up positive, at which the four edges came in one run; an edge that was not noted is absent. */
export type RunEdges = Readonly<Partial<Record<ZoneEdge, number>>>;

/** What one run past a landing measures. */
export interface RunMeasure {
  readonly upperLength: number | null;
  readonly lowerLength: number | null;
  readonly spacing: number | null;
  /** Middle of the two zones; null where the positions have no known zero or too few edges were noted. */
  readonly centre: number | null;
  /** The edges in the order they came; null unless all four were noted, for a blank field is not a dead sensor. */
  readonly order: readonly ZoneEdge[] | null;
  /** Edges that contradict the direction of travel: they came off before they came on. */
  readonly contradictions: readonly ("upperOff" | "lowerOff")[];
}

const average = (numbers: readonly number[]): number | null =>
  numbers.length === 0 ? null : numbers.reduce((sum, each) => sum + each, 0) / numbers.length;

/** Mean of what is known, null where nothing is. */
export const meanOfKnown = (numbers: readonly (number | null | undefined)[]): number | null =>
  average(numbers.filter((each): each is number => each !== null && each !== undefined));

function signalOf(on: number | undefined, off: number | undefined, travel: 1 | -1) {
  if (on === undefined || off === undefined) return { middle: null, length: null, contradicts: false };
  const length = (off - on) * travel;
  return length > 0
    ? { middle: (on + off) / 2, length, contradicts: false }
    : { middle: null, length: null, contradicts: true };
}

/** S from the middles of both zones; from the on-edges alone where an off-edge was not noted. */
function spacingOf(edges: RunEdges, middles: readonly [number | null, number | null], place: SensorPlace) {
  const [upper, lower] = middles;
  const sign = place === "car" ? 1 : -1;
  if (upper !== null && lower !== null) return sign * (lower - upper);
  const { upperOn, lowerOn } = edges;
  return upperOn === undefined || lowerOn === undefined ? null : sign * (lowerOn - upperOn);
}

function orderOf(edges: RunEdges, direction: Direction, place: SensorPlace): readonly ZoneEdge[] | null {
  const travel = direction === "up" ? 1 : -1;
  const known = expectedOrder(direction, place).filter((edge) => edges[edge] !== undefined);
  if (known.length < 4) return null;
  // A stable sort: edges at the same position keep the order they should have.
  return [...known].sort((one, other) => ((edges[one] ?? 0) - (edges[other] ?? 0)) * travel);
}

/** @param knownSpacing S from the site's drawing, m: with it one signal alone gives the centre */
export function measureRun(
  edges: RunEdges,
  direction: Direction,
  place: SensorPlace,
  knownSpacing: number | undefined,
): RunMeasure {
  const travel = direction === "up" ? 1 : -1;
  const upper = signalOf(edges.upperOn, edges.upperOff, travel);
  const lower = signalOf(edges.lowerOn, edges.lowerOff, travel);
  const half = knownSpacing === undefined ? null : ((place === "car" ? 1 : -1) * knownSpacing) / 2;
  const both = upper.middle !== null && lower.middle !== null;
  const upperCentre =
    upper.middle === null || (half === null && !both) ? null : upper.middle + (both ? 0 : (half ?? 0));
  const lowerCentre =
    lower.middle === null || (half === null && !both) ? null : lower.middle - (both ? 0 : (half ?? 0));
  return {
    upperLength: upper.length,
    lowerLength: lower.length,
    spacing: spacingOf(edges, [upper.middle, lower.middle], place),
    centre: meanOfKnown([upperCentre, lowerCentre]),
    order: orderOf(edges, direction, place),
    contradictions: [
      ...(upper.contradicts ? (["upperOff"] as const) : []),
      ...(lower.contradicts ? (["lowerOff"] as const) : []),
    ],
  };
}

export interface RunTimes {
  readonly edges: RunEdges;
  /** Time at which the car passed the level of the landing. */
  readonly level: number | undefined;
}

/** Edge times, s, at constant speed, m/s, as positions; without the level's time their zero is arbitrary. */
export function positionsFromTimes(times: RunTimes, direction: Direction, speed: number): RunEdges {
  const travel = direction === "up" ? 1 : -1;
  const zero = times.level ?? 0;
  const positions: Partial<Record<ZoneEdge, number>> = {};
  for (const [edge, time] of Object.entries(times.edges)) {
    if (time !== undefined) positions[edge as ZoneEdge] = travel * speed * (time - zero);
  }
  return positions;
}

/** Sentences at the fields whose edges contradict the direction of travel. `keyOf` names the field of an edge. */
export function contradictionProblems(
  measure: RunMeasure,
  direction: Direction,
  keyOf: (edge: ZoneEdge) => string,
): Problem[] {
  return measure.contradictions.map((edge) => ({
    field: keyOf(edge),
    sentence: `Moving ${direction}, this signal goes off before it came on. On and off the wrong way round? It is left out until you decide.`,
  }));
}
