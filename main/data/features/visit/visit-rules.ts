import { type FieldProblem, SillbookError } from "#shared-lib/errors.ts";
import type { Context } from "../../context.ts";
import type { StoredRecord } from "../../record-store.ts";
import { clockWords, likelyMeant, refuseFutureTime } from "../../times.ts";

/** The fields of a visit that have to fit one another and the callout. */
export interface VisitFacts {
  readonly liftId: string;
  readonly calloutId: string | null;
  readonly engineerId: string;
  readonly arrivedAt: string;
  readonly leftAt: string | null;
}

type Path = FieldProblem["path"];
const minuteOf = (moment: string): string => moment.slice(0, 16);

/** Times are compared by the minute, because that is how people write them down. */
function refuseTime(path: Path, message: string, facts: Readonly<Record<string, unknown>>): never {
  throw new SillbookError("time-refused", `${message} Nothing was recorded.`, {
    ...facts,
    fields: [{ path, message }],
  });
}

function refuseFuture(path: Path, at: string, now: string): void {
  try {
    refuseFutureTime(at, now);
  } catch (error) {
    if (error instanceof SillbookError)
      refuseTime(path, `${clockWords(at, now)} has not come yet.`, { at, now });
    throw error;
  }
}

function refuseOtherLift(visit: VisitFacts, callout: StoredRecord, path: Path): void {
  if (callout.liftId === visit.liftId) return;
  const message =
    callout.liftId === null
      ? `It is not settled yet which lift callout ${callout.number} is about. Settle that first.`
      : `Callout ${callout.number} is about another lift.`;
  throw new SillbookError("input-invalid", `${message} Nothing was recorded.`, {
    fields: [{ path, message }],
  });
}

function refuseBeforeCall(arrivedAt: string, callout: StoredRecord, path: Path, now: string): void {
  const receivedAt = callout.receivedAt as string;
  if (minuteOf(arrivedAt) >= minuteOf(receivedAt)) return;
  const meant = likelyMeant(arrivedAt, receivedAt, now);
  const question = meant ? ` Did you mean ${clockWords(meant)}?` : "";
  refuseTime(path, `The arrival is before the call at ${clockWords(receivedAt, arrivedAt)}.${question}`, {
    at: arrivedAt,
    receivedAt,
    meant,
  });
}

const bearOnTimes = ["calloutId", "liftId", "arrivedAt", "leftAt"] as const;

/**
 * A visit names records that exist, a callout of its own lift, and times that can be: arrived not before the call,
 * left not before arrived, nothing in the future. Only what is given now is looked at: a person who has left the
 * company, or a call whose time was corrected since, must not keep anybody from correcting the words of a visit.
 * @param under where the fields stand in the input, for the paths of the problems
 * @throws SillbookError not-found, input-invalid, time-refused
 */
export function refuseImpossibleVisit(
  context: Context,
  visit: VisitFacts,
  given: Readonly<Partial<Record<keyof VisitFacts, unknown>>>,
  under: Path,
): void {
  if (given.liftId !== undefined) context.records.find("lift", visit.liftId);
  if (given.engineerId !== undefined) context.records.find("person", visit.engineerId);
  if (bearOnTimes.every((field) => given[field] === undefined)) return;
  const { arrivedAt, leftAt, calloutId } = visit;
  refuseFuture([...under, "arrivedAt"], arrivedAt, context.now);
  if (calloutId) {
    const callout = context.records.find("callout", calloutId);
    refuseOtherLift(visit, callout, [...under, "calloutId"]);
    refuseBeforeCall(arrivedAt, callout, [...under, "arrivedAt"], context.now);
  }
  if (leftAt === null) return;
  refuseFuture([...under, "leftAt"], leftAt, context.now);
  if (minuteOf(leftAt) < minuteOf(arrivedAt)) {
    refuseTime([...under, "leftAt"], `That is before the arrival at ${clockWords(arrivedAt, leftAt)}.`, {
      at: leftAt,
      arrivedAt,
    });
  }
}
