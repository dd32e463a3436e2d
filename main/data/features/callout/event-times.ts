import { SillbookError } from "#shared-lib/errors.ts";
import { clockWords, likelyMeant, refuseFutureTime } from "../../times.ts";

const minuteOf = (moment: string): string => moment.slice(0, 16);

/** An event cannot be before the call, nor in the future. */
export function refuseImpossibleTime(at: string, receivedAt: string, now: string): void {
  refuseFutureTime(at, now);
  if (minuteOf(at) >= minuteOf(receivedAt)) return;
  const meant = likelyMeant(at, receivedAt, now);
  const question = meant ? ` Did you mean ${clockWords(meant)}?` : "";
  throw new SillbookError(
    "time-refused",
    `An event cannot be before the call at ${clockWords(receivedAt, at)}.${question}`,
    {
      at,
      receivedAt,
      meant,
      fields: [{ path: ["at"], message: `Before the call at ${clockWords(receivedAt, at)}.` }],
    },
  );
}

/** Nobody can be released before somebody said that they are inside. */
export function refuseEarlyRelease(at: string, insideSince: string | null): void {
  if (!insideSince || minuteOf(at) >= minuteOf(insideSince)) return;
  throw new SillbookError(
    "time-refused",
    `People inside were reported at ${clockWords(insideSince, at)}, later than that.`,
    {
      at,
      insideSince,
      fields: [{ path: ["at"], message: `Before the report at ${clockWords(insideSince, at)}.` }],
    },
  );
}
