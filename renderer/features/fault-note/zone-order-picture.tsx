import type { FaultNoteFields } from "#shared-lib/contract/fault-note.ts";
import { TimeSignals } from "../../ui/drawings/time-signals.tsx";
import { zoneOrderPanels } from "./zone-order-panels.ts";

/** Drawn where the note leads to the calculator of zone sensors by the order seen; nothing elsewhere. */
export function ZoneOrderPicture({ note }: { readonly note: Pick<FaultNoteFields, "calculators"> }) {
  const panels = zoneOrderPanels(note.calculators);
  if (panels === null) return null;
  return (
    <div>
      <TimeSignals expected={panels.expected} seen={panels.seen} />
      <p className="soft label">
        What should be seen, as common practice has it: the order of the edges, not their times.
      </p>
    </div>
  );
}
