import type { FaultNoteFields } from "#shared-lib/contract/fault-note.ts";
import { SillbookError } from "#shared-lib/errors.ts";
import { type Context, type Handlers, signerOf } from "../../context.ts";
import { takenBackSql } from "./cause.sql.ts";
import { rankForSubject } from "./rank-for-subject.ts";
import { findSubject, type Subject } from "./subject.ts";

/** Causes that are kept with an answer: enough to read the path by, whatever the history says later. */
const keptCauses = 3;

function refuse(path: string, message: string): never {
  throw new SillbookError("input-invalid", `${message} Nothing was recorded.`, {
    fields: [{ path: [path], message }],
  });
}

/** The lift a step is recorded on. @throws SillbookError input-invalid where there is none to record it on */
function liftOf(context: Context, { liftId, calloutId, visitId }: Subject): string {
  if (calloutId === null && visitId === null)
    refuse("calloutId", "An answer belongs to a callout or a visit: say which.");
  if (liftId === null) refuse("calloutId", "Settle first which lift the callout is about.");
  return context.records.find("lift", liftId).id;
}

function findAnswer(checks: FaultNoteFields["checks"], checkKey: string, outcomeKey: string) {
  const check = checks.find(({ key }) => key === checkKey);
  if (!check) refuse("checkKey", "The fault note has no such check.");
  const outcome = check.outcomes.find(({ key }) => key === outcomeKey);
  if (!outcome) refuse("outcomeKey", `The check “${check.title}” has no such outcome.`);
  return { check, outcome };
}

export const causeCommands: Handlers<"cause.answerCheck" | "cause.takeBack"> = {
  /** Kept with the words of the check and what stood first then, so that the path reads the same later. */
  "cause.answerCheck"(context, { noteId, checkKey, outcomeKey, ...about }) {
    const note = context.records.find("fault note", noteId);
    const subject = findSubject(context, about);
    const liftId = liftOf(context, subject);
    const { check, outcome } = findAnswer(note.checks as FaultNoteFields["checks"], checkKey, outcomeKey);
    const ranking = rankForSubject(context, note, subject, { check, outcome });
    return context.records.insert("cause step", {
      liftId,
      calloutId: subject.calloutId,
      visitId: subject.visitId,
      noteId,
      checkKey,
      checkTitle: check.title,
      outcomeKey,
      outcomeWords: outcome.words,
      at: context.now,
      personId: signerOf(context).id,
      takesBack: null,
      after:
        ranking.contradiction === null
          ? ranking.causes.slice(0, keptCauses).map(({ title, probability }) => ({ title, probability }))
          : [],
    });
  },

  "cause.takeBack"(context, { stepId }) {
    const step = context.records.find("cause step", stepId);
    if (step.takesBack !== null) refuse("stepId", "That row takes an answer back itself.");
    if (context.store.get(takenBackSql, { id: stepId }))
      throw new SillbookError("state-refused", "That answer is taken back already.", { id: stepId });
    const { id: _id, version: _version, createdAt: _createdAt, deleted: _deleted, ...fields } = step;
    return context.records.insert("cause step", {
      ...(fields as Record<string, string | null>),
      at: context.now,
      personId: signerOf(context).id,
      takesBack: stepId,
      after: [],
    });
  },
};
