import type { InputOf } from "#shared-lib/contract/operations.ts";
import type { bridgeControls, chainContacts } from "#shared-lib/words.ts";
import { emptyProblem, readMomentEntry } from "./entry-parts.ts";

export interface SetBridgeDraft {
  readonly contact: (typeof chainContacts)[number] | null;
  readonly landingId: string | null;
  readonly points: string;
  readonly leadNumber: string;
  readonly reason: string;
  readonly control: (typeof bridgeControls)[number] | null;
  readonly at: string;
  /** True once saving was asked for: what is missing is said from then on. */
  readonly tried: boolean;
}

export const startSetBridge: SetBridgeDraft = {
  contact: null,
  landingId: null,
  points: "",
  leadNumber: "",
  reason: "",
  control: null,
  at: "",
  tried: false,
};

export interface SetBridgeReading {
  readonly input: Omit<InputOf<"bridge.set">, "liftId"> | null;
  readonly problems: Readonly<Record<string, string | undefined>>;
}

/** A bridge is only found again when the register says where it is: contact, points, and the landing of a landing door. */
export function readSetBridge(draft: SetBridgeDraft, now: Date): SetBridgeReading {
  const { contact, control } = draft;
  const moment = readMomentEntry(draft.at, now);
  const needsLanding = contact?.startsWith("landing door") === true && draft.landingId === null;
  const problems = {
    contact: contact === null ? "Say which contact." : undefined,
    landingId: needsLanding ? "Say at which landing." : undefined,
    points: emptyProblem(draft.points, "Say between which points, as marked on the site’s drawing."),
    leadNumber: emptyProblem(draft.leadNumber, "Number the lead, so that it can be told from the others."),
    reason: emptyProblem(draft.reason, "Say why it is needed."),
    control: control === null ? "Say under which control. Nothing is bridged in normal service." : undefined,
    setAt: moment.ok ? undefined : moment.problem,
  };
  const clean = Object.values(problems).every((problem) => problem === undefined);
  if (!clean || contact === null || control === null || !moment.ok) return { input: null, problems };
  const { landingId, points, leadNumber, reason } = draft;
  const at = moment.at === undefined ? {} : { setAt: moment.at };
  return { input: { contact, landingId, points, leadNumber, reason, control, ...at }, problems };
}
