import type { CauseRanking, CauseStep, OfferedCheck } from "#shared-lib/contract/cause.ts";
import type { FaultNoteFields } from "#shared-lib/contract/fault-note.ts";
import { contradictionSentence, evidenceSentence, whyCheck } from "#shared-lib/diagnosis/diagnosis-words.ts";
import { leastGain, orderChecks, type WeighedCheck } from "#shared-lib/diagnosis/next-check.ts";
import { type AnsweredCheck, type RankedCause, rankCauses } from "#shared-lib/diagnosis/rank-causes.ts";
import { expectedRepairMinutes, repairOrder } from "#shared-lib/diagnosis/repair-order.ts";
import type { Context } from "../../context.ts";
import type { StoredRecord } from "../../record-store.ts";
import { gatherEvidence, type NoteEvidence } from "./evidence.ts";
import { stepsOf } from "./steps.ts";
import type { Subject } from "./subject.ts";

type Note = Pick<FaultNoteFields, "causes" | "checks"> & {
  readonly id: string;
  readonly number: string;
  readonly title: string;
};

/** A repair whose length is not on record takes an hour: assumed, and said so. */
const assumedMinutes = 60;
const leastVisits = 3;

/** The answers that count, as the note's checks now read; one whose check or outcome was taken out counts no more. */
function answersIn(note: Note, steps: readonly CauseStep[]): AnsweredCheck[] {
  return steps.flatMap((step) => {
    if (step.takenBack !== null || step.overtaken) return [];
    const check = note.checks.find(({ key }) => key === step.checkKey);
    const outcome = check?.outcomes.find(({ key }) => key === step.outcomeKey);
    return check && outcome ? [{ check, outcome }] : [];
  });
}

function toOffered(weighed: WeighedCheck, note: Note): OfferedCheck {
  const { check, gain, careful } = weighed;
  return {
    key: check.key,
    title: check.title,
    how: check.how,
    minutes: check.minutes,
    hazard: check.hazard,
    caution: check.caution ?? "",
    outcomes: check.outcomes.map(({ key, words }) => ({ key, words })),
    gain,
    tells: gain >= leastGain,
    careful,
    why: whyCheck(weighed, note.causes),
  };
}

function toRankedCause(ranked: RankedCause, note: Note): CauseRanking["causes"][number][] {
  const place = note.causes.findIndex(({ key }) => key === ranked.key);
  const cause = note.causes[place];
  if (!cause) return [];
  const words = ({ check, outcome }: AnsweredCheck): string => `${check.title}: ${outcome.words}`;
  return [
    {
      ...ranked,
      title: cause.title,
      tell: cause.tell,
      fix: cause.fix,
      caution: cause.caution ?? "",
      place: place + 1,
      ruledOutBy: ranked.ruledOutBy.map(words),
      provedBy: ranked.provedBy.map(words),
    },
  ];
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = Math.floor(sorted.length / 2);
  return sorted.length % 2 === 1
    ? (sorted[middle] as number)
    : ((sorted[middle - 1] as number) + (sorted[middle] as number)) / 2;
}

function repairsOf(causes: CauseRanking["causes"], { minutes }: NoteEvidence) {
  const repairs = causes
    .filter(({ probability }) => probability > 0)
    .map(({ key, title, probability }) => {
      const visits = minutes.get(key) ?? [];
      const known = visits.length >= leastVisits;
      return {
        causeKey: key,
        title,
        probability,
        minutes: known ? Math.max(1, Math.round(median(visits))) : assumedMinutes,
        fromVisits: known ? visits.length : 0,
      };
    });
  const ordered = repairOrder(repairs);
  return {
    repairs: ordered.map(({ probability: _probability, ...repair }) => repair),
    expectedMinutes: expectedRepairMinutes(ordered),
  };
}

/**
 * Everything the screen shows of a note's causes for one callout, visit or lift.
 * @param added an answer that is about to be recorded
 */
export function rankForSubject(
  context: Context,
  record: StoredRecord,
  subject: Subject,
  added?: AnsweredCheck,
): CauseRanking {
  const note = record as unknown as Note;
  const steps = stepsOf(context.store, subject).filter(({ noteId }) => noteId === note.id);
  const given = answersIn(note, steps);
  const answers = added ? [...given.filter(({ check }) => check.key !== added.check.key), added] : given;
  const found = gatherEvidence(context, note.id, subject);
  const ranking = rankCauses(note, found.evidence, answers);
  const causes = ranking.causes.flatMap((cause) => toRankedCause(cause, note));
  const open = note.checks.filter(({ key }) => !answers.some(({ check }) => check.key === key));
  const offered = ranking.contradiction
    ? []
    : orderChecks(ranking.probabilities, open).map((one) => toOffered(one, note));
  const next = offered[0]?.tells ? offered[0] : null;
  const { callouts, alike, onLift, thin } = ranking;
  const untold = found.callouts - callouts;
  return {
    noteId: note.id,
    noteNumber: note.number,
    noteTitle: note.title,
    causes,
    evidence: {
      callouts,
      alike,
      onLift,
      untold,
      thin,
      sentence: evidenceSentence(ranking, untold),
    },
    answers: steps,
    contradiction: ranking.contradiction ? contradictionSentence(answers) : null,
    next,
    others: next ? offered.slice(1) : offered,
    ...(ranking.contradiction ? { repairs: [], expectedMinutes: 0 } : repairsOf(causes, found)),
  };
}
