import type { SignalPanel, TimeSignal } from "#shared-lib/drawings/time-signals.ts";

interface Edge {
  readonly signal: string;
  readonly to: "on" | "off";
}

/** "lower off" is an edge of the signal "lower"; a switch that only acts, "final switch", comes on and stays. */
function edgeOf(words: string): Edge {
  const edge = /^(.*) (on|off)$/.exec(words);
  return edge ? { signal: edge[1] ?? words, to: edge[2] as "on" | "off" } : { signal: words, to: "on" };
}

/** Row order is the car's: upper above lower; others as they come. */
function rowsOf(orders: readonly (readonly string[])[]): string[] {
  const names = [...new Set(orders.flat().map((words) => edgeOf(words).signal))];

  return names.every((name) => name === "upper" || name === "lower") ? names.sort().reverse() : names;
}

/** Before its first edge a signal stands at the other level. */
function startOf(signal: string, orders: readonly (readonly string[])[]): "on" | "off" {
  for (const order of orders) {
    const first = order.map(edgeOf).find((edge) => edge.signal === signal);
    if (first) return first.to === "on" ? "off" : "on";
  }
  return "off";
}

function levelsOf(signal: string, order: readonly string[], start: "on" | "off", end: number): TimeSignal {
  const levels: { from: number; to: number; state: "on" | "off" }[] = [];
  let [from, state] = [0, start];
  for (const [index, edge] of order.map(edgeOf).entries()) {
    if (edge.signal !== signal) continue;
    levels.push({ from, to: index + 1, state });
    from = index + 1;
    state = edge.to;
  }
  levels.push({ from, to: end, state });
  return { name: signal, levels };
}

/**
 * How the signals should come, and how they came; one step of time per edge, because an order has no times.
 * @param seen null while nothing was recorded or pressed
 */
export function orderPanels(
  expected: readonly string[],
  seen: readonly string[] | null,
): { readonly expected: SignalPanel; readonly seen: SignalPanel | null } {
  const orders = [expected, ...(seen ? [seen] : [])];
  const end = Math.max(...orders.map((order) => order.length)) + 1;
  const rows = rowsOf(orders);
  const panel = (title: string, order: readonly string[], known: readonly (readonly string[])[]) => ({
    title,
    from: 0,
    to: end,
    unit: "",
    signals: rows.map((signal) => levelsOf(signal, order, startOf(signal, known), end)),
    moments: [],
  });
  return {
    expected: panel("Should be", expected, [expected, ...(seen ? [seen] : [])]),
    // A signal that never came stands where it should have started.
    seen: seen ? panel("Seen", seen, [seen, expected]) : null,
  };
}

const zoneEdges = ["upper on", "upper off", "lower on", "lower off"];

/** What can be pressed: at a terminal landing all four edges, although only two should come, because a fault may bring any. */
export function orderChoices(expected: readonly string[]): readonly string[] {
  return expected.every((words) => zoneEdges.includes(words)) ? zoneEdges : [...new Set(expected)].sort();
}
