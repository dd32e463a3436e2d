import type { FaultNoteFields } from "#shared-lib/contract/fault-note.ts";

type NoteCheck = FaultNoteFields["checks"][number];

/** The kind of danger of a check, in words. */
export const hazardWords: {
  readonly [Hazard in NoteCheck["hazard"]]: string;
} = {
  none: "No special hazard",
  live: "Live measuring: trained people with a rated meter only",
  shaft: "In the shaft or on the car top: trained people only",
  isolated: "Isolated, locked off and proved dead first",
};
