import type { Drawing } from "./drawing.ts";
import type { Pen } from "./pen.ts";
import { lengthOf } from "./zone-geometry.ts";
import { unlockingSignal, type ZoneState } from "./zone-judgement.ts";
import {
  type Direction,
  edgeWords,
  expectedOrder,
  readRun,
  runWords,
  type SensorPlace,
  type ZoneEdge,
} from "./zone-order.ts";

export type Orders = Partial<Record<Direction, readonly ZoneEdge[]>>;

export function orderDrawing(orders: Orders, sensorsOn: SensorPlace): Drawing {
  return {
    kind: "edge-order",
    title: "Order of the zone signals",
    runs: (["up", "down"] as const).map((direction) => {
      const seen = orders[direction];
      const kind = readRun(seen, direction, sensorsOn);
      return {
        direction,
        expected: expectedOrder(direction, sensorsOn).map((edge) => edgeWords[edge]),
        seen: seen === undefined ? null : seen.map((edge) => edgeWords[edge]),
        word: runWords[kind],
        right: seen === undefined ? null : kind === "right",
      };
    }),
  };
}

export function zoneBars(state: ZoneState, pen: Pen): Drawing[] {
  const { zones, centre } = state;
  if (zones === null || centre === null) return [];
  const unlocking = unlockingSignal(state);
  const named = [
    ["upper", zones.upper],
    ["lower", zones.lower],
    ["both", zones.both],
    ["either", zones.either],
  ] as const;
  const limit = state.unlockingZone;
  const outside = state.tolerance !== undefined && Math.abs(centre) > state.tolerance + 1e-9;
  return [
    {
      kind: "zone-bars",
      title: "Car positions at which each signal is on",
      bars: named.flatMap(([name, zone]) =>
        zone === null
          ? []
          : [{ name, from: zone.from, to: zone.to, length: lengthOf(zone), unlocks: zone === unlocking }],
      ),
      limits:
        limit === undefined
          ? []
          : [limit, -limit].map((at) => ({ at, words: `${pen.write(at, "mm", 0, true)} limit` })),
      centre: { at: centre, words: `${pen.write(centre, "mm", 0, true)} centre`, outside },
    },
  ];
}

export function magnetDetail(
  state: ZoneState,
  sizes: { readonly length: number | null; readonly spacing: number | null },
  landing: string,
  pen: Pen,
): Drawing[] {
  const { length, spacing } = sizes;
  const { centre } = state;
  if (centre === null || length === null || spacing === null) return [];
  const off = pen.write(Math.abs(centre), "mm", 0);
  return [
    {
      kind: "magnet-detail",
      title: "In the well, car level",
      landing,
      sensorsOn: state.sensorsOn,
      magnetLength: length,
      offset: centre,
      offsetWords: Math.abs(centre) < 0.0005 ? "in place" : `${off} ${centre > 0 ? "high" : "low"}`,
      outside: state.tolerance !== undefined && Math.abs(centre) > state.tolerance + 1e-9,
      sensorSpacing: spacing,
    },
  ];
}
