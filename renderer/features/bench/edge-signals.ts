import type { Drawing } from "#shared-lib/calculators/drawing.ts";
import type { SignalLevel, SignalPanel, TimeSignal } from "#shared-lib/drawings/time-signals.ts";

export type EdgeOrderDrawing = Extract<Drawing, { kind: "edge-order" }>;
export type EdgeRun = EdgeOrderDrawing["runs"][number];

interface Edge {
  readonly signal: string;
  readonly on: boolean;
}

function readEdge(words: string): Edge | null {
  const parts = /^(.*) (on|off)$/.exec(words);
  return parts?.[1] === undefined ? null : { signal: parts[1], on: parts[2] === "on" };
}

/** Upper above lower, as the sensors stand; others in the order they are named. */
function signalNames(run: EdgeRun): readonly string[] {
  const named = [...run.expected, ...(run.seen ?? [])].flatMap((words) => readEdge(words)?.signal ?? []);
  const names = [...new Set(named)];
  return names.sort((one, other) => Number(other.startsWith("upper")) - Number(one.startsWith("upper")));
}

/** Each edge takes one step: only the order is known, not the time between. */
function levelsOf(signal: string, edges: readonly string[], last: number): SignalLevel[] {
  const levels: SignalLevel[] = [];
  let from = 0;
  let state: SignalLevel["state"] = "off";
  for (const [index, words] of edges.entries()) {
    const edge = readEdge(words);
    if (edge?.signal !== signal) continue;
    const next = edge.on ? "on" : "off";
    if (next === state) continue;
    levels.push({ from, to: index + 1, state });
    from = index + 1;
    state = next;
  }
  levels.push({ from, to: last, state });
  return levels;
}

function panelOf(
  title: string,
  edges: readonly string[],
  names: readonly string[],
  last: number,
): SignalPanel {
  const signals = names.map((name): TimeSignal => ({ name, levels: levelsOf(name, edges, last) }));
  return { title, from: 0, to: last, unit: "in order", signals, moments: [] };
}

/** One direction as two pictures on the same steps: what was expected, and what was seen where it was run. */
export function edgePanels(run: EdgeRun): {
  readonly expected: SignalPanel;
  readonly seen: SignalPanel | null;
} {
  const names = signalNames(run);
  const last = Math.max(run.expected.length, run.seen?.length ?? 0) + 1;
  return {
    expected: panelOf(`Moving ${run.direction}, expected`, run.expected, names, last),
    seen: run.seen === null ? null : panelOf(`Moving ${run.direction}, seen`, run.seen, names, last),
  };
}
