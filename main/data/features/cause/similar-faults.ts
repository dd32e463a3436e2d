import type { OutputOf, ParsedInputOf } from "#shared-lib/contract/operations.ts";
import { type SimilarCallout, similarCallouts } from "#shared-lib/diagnosis/similar-callouts.ts";
import { foldWord } from "#shared-lib/search/fold-word.ts";
import type { Context } from "../../context.ts";
import type { StoredRecord } from "../../record-store.ts";
import { type Suggestion, suggestNotes } from "../fault-note/suggest-notes.ts";
import { findLiftLine } from "../lift/lift-lines.ts";
import { HitDescriber } from "../search/describe-hits.ts";
import { rankedSearch } from "../search/ranked-search.ts";
import { similarFixesSql } from "./cause.sql.ts";
import { circleOf } from "./evidence.ts";
import { rankForSubject } from "./rank-for-subject.ts";

type Answer = OutputOf<"cause.similar">;
type Input = ParsedInputOf<"cause.similar">;

interface FixRow {
  readonly fixId: string;
  readonly calloutId: string;
  readonly number: string;
  readonly said: string;
  readonly at: string;
  readonly cause: string;
  readonly fix: string;
  readonly noteId: string | null;
  readonly causeKey: string | null;
  readonly liftId: string | null;
  readonly liftTitle: string;
  readonly controllerFamily: string | null;
  readonly driveKind: string | null;
}

/** Matches that are looked at: enough for the causes of the nearest few dozen callouts. */
const candidateCount = 80;
const mostFixes = 600;
/**
 * A callout in other words counts as this share of the best match when it is attached to the note that is most like
 * what is said: notes hold the many ways in which one fault is told. Measured in tests/bench/cause-ranking.
 */
const throughNote = 0.7;
const longestSaid = 2000;
const circleWords = { lift: "this lift", alike: "same family and drive", elsewhere: "" } as const;

/** Fixes in the words of the caller that are nearest, with the note they point to. */
export function similarFaults(context: Context, input: Input): Answer {
  const { liftId, limit } = input;
  const text = input.text.slice(0, longestSaid);
  const lift = liftId ? findLiftLine(context.store, liftId) : null;
  const { query, groups } = rankedSearch(context.store, context.search, {
    text,
    kinds: ["fix"],
    filter: {},
    context: null,
    limitPerKind: candidateCount,
    keepWords: [],
    typing: true,
  });
  const [note] = suggestNotes(context.store, text, suggestedFor(context, liftId), 1);
  const scores = new Map(
    groups.flatMap(({ hits }) => hits.map(({ key, score }) => [key.slice("fix ".length), score])),
  );
  const rows = context.store.all<FixRow>(similarFixesSql, {
    fixIds: JSON.stringify([...scores.keys()]),
    noteId: note?.noteId ?? null,
    without: input.calloutId,
    limit: mostFixes,
  });
  const best = Math.max(...scores.values(), 0) || 1;
  const causeOf = causeIds(rows);
  const candidates = rows.map((row) => ({
    ...row,
    causeId: causeOf(row),
    circle: circleOf(row, liftId, lift),
    score: Math.max(scores.get(row.fixId) ?? 0, row.noteId === note?.noteId ? throughNote * best : 0),
  }));
  const describer = new HitDescriber(context.store, query);
  return {
    callouts: similarCallouts(candidates, limit).map((one) => toLine(one, describer)),
    note: note ? describeNote(context, note, input, text) : null,
  };
}

const wordsOf = (text: string): string => foldWord(text.replace(/\s+/g, " ").trim());

/** Fixes attached to the same cause of a note, and fixes in the same words, are of one cause. */
function causeIds(rows: readonly FixRow[]): (row: FixRow) => string {
  const attached = (row: FixRow): string | null =>
    row.noteId !== null && row.causeKey !== null ? `${row.noteId} ${row.causeKey}` : null;
  const byWords = new Map(
    rows.flatMap((row) => (attached(row) ? [[wordsOf(row.cause), attached(row)]] : [])),
  );
  return (row) => attached(row) ?? byWords.get(wordsOf(row.cause)) ?? wordsOf(row.cause);
}

function toLine(
  {
    candidate,
    sameCause,
    near,
  }: SimilarCallout<FixRow & { causeId: string; circle: keyof typeof circleWords; score: number }>,
  describer: HitDescriber,
): Answer["callouts"][number] {
  const { calloutId, number, said, at, cause, fix, liftTitle, circle } = candidate;
  const counted = near > 1 ? `${sameCause} of ${near} like it` : "";
  return {
    calloutId,
    number,
    liftTitle,
    at,
    said,
    saidMarks: describer.marks(said),
    cause,
    fix,
    circle,
    sameCause,
    near,
    why: [circleWords[circle], counted].filter((words) => words !== "").join("; "),
  };
}

function suggestedFor(context: Context, liftId: string | null): StoredRecord | null {
  return liftId ? context.records.findIncludingDeleted("lift", liftId) : null;
}

function describeNote(
  context: Context,
  best: Suggestion,
  { liftId, calloutId }: Input,
  text: string,
): Answer["note"] {
  const note = context.records.find("fault note", best.noteId);
  const ranking = rankForSubject(context, note, { liftId, calloutId, visitId: null, text });
  const [first] = ranking.causes;
  const counted =
    ranking.evidence.thin || !first ? "" : `, ${first.callouts} of ${ranking.evidence.callouts}`;
  const lead = ranking.evidence.thin ? "First to look at" : "Most likely";
  return {
    id: best.noteId,
    number: note.number as string,
    title: note.title as string,
    status: note.status as NonNullable<Answer["note"]>["status"],
    cause: first ? `${lead}: ${first.title}${counted}.` : "",
    why: best.why,
  };
}
