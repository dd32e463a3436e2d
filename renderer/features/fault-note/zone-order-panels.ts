import {
  type Direction,
  edgeWords,
  expectedOrder,
  type ZoneEdge,
} from "#shared-lib/calculators/zone-order.ts";
import { zoneSensors } from "#shared-lib/calculators/zone-sensors.ts";
import type { FaultNoteFields } from "#shared-lib/contract/fault-note.ts";
import type { SignalPanel, TimeSignal } from "#shared-lib/drawings/time-signals.ts";

type CalculatorLink = FaultNoteFields["calculators"][number];

/**
 * The order in which the two zone signals should come, for a note that leads to the calculator of zone sensors by
 * the order seen. Where the note names an order that is seen, it stands beside what it should be; else up stands
 * beside down. One step per edge: the pictures show an order, not times.
 */
export function zoneOrderPanels(
  links: readonly CalculatorLink[],
): { readonly expected: SignalPanel; readonly seen: SignalPanel } | null {
  const link = links.find(({ id, preset }) => id === zoneSensors.id && preset.measured === "order");
  if (link === undefined) return null;
  const place = link.preset.sensorsOn === "well" ? "well" : "car";
  for (const direction of ["down", "up"] as const) {
    const seen = edgesOf(direction === "down" ? link.preset.orderDown : link.preset.orderUp);
    if (seen.length > 0) {
      return {
        expected: panel(`Should be, moving ${direction}`, expectedOrder(direction, place)),
        seen: panel(`In this fault, moving ${direction}`, seen),
      };
    }
  }
  const inOrder = (direction: Direction): SignalPanel => {
    const order = expectedOrder(direction, place);
    const first = order[0] === "lowerOn" ? "lower first" : "upper first";
    return panel(`Moving ${direction}: ${first}`, order);
  };
  return { expected: inOrder("down"), seen: inOrder("up") };
}

function edgesOf(value: unknown): ZoneEdge[] {
  if (!Array.isArray(value)) return [];
  return value.filter((edge): edge is ZoneEdge => typeof edge === "string" && edge in edgeWords);
}

/** Drawn on a little, so that the last edge is seen to be one. */
const afterLastEdge = 0.8;

function panel(title: string, order: readonly ZoneEdge[]): SignalPanel {
  return {
    title,
    from: 0,
    to: order.length + afterLastEdge,
    unit: "edges",
    signals: [signal("upper", order, "upperOn", "upperOff"), signal("lower", order, "lowerOn", "lowerOff")],
    moments: [],
  };
}

/** Levels between the edges as they came; a signal is off until its first edge says otherwise. */
function signal(name: string, order: readonly ZoneEdge[], on: ZoneEdge, off: ZoneEdge): TimeSignal {
  const levels: { from: number; to: number; state: "on" | "off" }[] = [];
  let from = 0;
  let state: "on" | "off" = "off";
  for (const [index, edge] of order.entries()) {
    if (edge !== on && edge !== off) continue;
    levels.push({ from, to: index + 1, state });
    from = index + 1;
    state = edge === on ? "on" : "off";
  }
  levels.push({ from, to: order.length + afterLastEdge, state });
  return { name, levels };
}
