import { TimeSignals } from "../../ui/drawings/time-signals.tsx";
import { orderPanels } from "./order-panels.ts";

interface OrderDrawingProps {
  readonly expected: readonly string[];
  readonly seen: readonly string[] | null;
}

/** How the signals should come and how they came, side by side. */
export function OrderDrawing({ expected, seen }: OrderDrawingProps) {
  const panels = orderPanels(expected, seen);
  return (
    <div className="check-drawing">
      <TimeSignals expected={panels.expected} seen={panels.seen} />
      <p className="soft label">
        The order of the edges, drawn by meaning (on is up), not to a scale of time.
      </p>
    </div>
  );
}
