import type { CauseEvidence, Circle } from "#shared-lib/diagnosis/rank-causes.ts";
import { likenessTo } from "#shared-lib/diagnosis/text-likeness.ts";
import type { Context } from "../../context.ts";
import { evidenceOfNoteSql } from "./cause.sql.ts";
import type { Subject } from "./subject.ts";

interface EvidenceRow {
  readonly calloutId: string;
  readonly causeKey: string | null;
  readonly said: string;
  readonly liftId: string | null;
  readonly controllerFamily: string | null;
  readonly driveKind: string | null;
  readonly minutes: number | null;
}

export interface NoteEvidence {
  readonly evidence: readonly CauseEvidence[];
  /** Distinct callouts of the note, those included whose cause was not told. */
  readonly callouts: number;
  /** Minutes of the visits that put each cause right. */
  readonly minutes: ReadonlyMap<string, readonly number[]>;
}

/** Past callouts of one note that are looked at, the newest: more of them change no order. */
const mostCallouts = 500;

interface Alike {
  readonly controllerFamily: string | null;
  readonly driveKind: string | null;
}

export function circleOf(
  row: Alike & { readonly liftId: string | null },
  liftId: string | null,
  lift: Alike | null,
): Circle {
  if (liftId !== null && row.liftId === liftId) return "lift";
  const isAlike =
    lift?.controllerFamily &&
    lift.controllerFamily === row.controllerFamily &&
    lift.driveKind === row.driveKind;
  return isAlike ? "alike" : "elsewhere";
}

/** What the company's own callouts say of the causes of a note, the callout in hand left out. */
export function gatherEvidence(context: Context, noteId: string, subject: Subject): NoteEvidence {
  const rows = context.store.all<EvidenceRow>(evidenceOfNoteSql, {
    noteId,
    without: subject.calloutId,
    limit: mostCallouts,
  });
  const lift = subject.liftId ? context.records.findIncludingDeleted("lift", subject.liftId) : null;
  const told = rows.filter((row) => row.causeKey !== null);
  const alike =
    subject.text.trim() === ""
      ? told.map(() => 1)
      : likenessTo(
          subject.text,
          told.map(({ said }) => said),
        );
  const evidence = told.map((row, index) => ({
    calloutId: row.calloutId,
    causeKey: row.causeKey as string,
    circle: circleOf(row, subject.liftId, lift as Alike | null),
    likeness: alike[index] ?? 0,
  }));
  const callouts = new Set(rows.map(({ calloutId }) => calloutId)).size;
  return { evidence, callouts, minutes: minutesByCause(told) };
}

function minutesByCause(rows: readonly EvidenceRow[]): Map<string, number[]> {
  const minutes = new Map<string, number[]>();
  for (const row of rows) {
    if (row.causeKey === null || row.minutes === null || row.minutes <= 0) continue;
    minutes.set(row.causeKey, [...(minutes.get(row.causeKey) ?? []), row.minutes]);
  }
  return minutes;
}
