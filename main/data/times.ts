import { SillbookError } from "#shared-lib/errors.ts";

const allowedAhead = 5 * 60 * 1000;

/** A time that has not come cannot be recorded. Five minutes are allowed for clocks that differ. */
export function refuseFutureTime(at: string, now: string): void {
  if (Date.parse(at) - Date.parse(now) > allowedAhead) {
    throw new SillbookError("time-refused", `${clockWords(at)} has not come yet. Nothing was recorded.`, {
      at,
      now,
    });
  }
}

/** "08:52", in the time zone of this machine; with the date where it is another day than `beside`. */
export function clockWords(at: string, beside: string = at): string {
  const date = new Date(at);
  const time = `${String(date.getHours()).padStart(2, "0")}:${String(date.getMinutes()).padStart(2, "0")}`;
  const sameDay = date.toDateString() === new Date(beside).toDateString();
  const day = date.toLocaleDateString("en-GB", { day: "numeric", month: "short", year: "numeric" });
  return sameDay ? time : `${time} on ${day}`;
}

const hour = 60 * 60 * 1000;

/**
 * What was probably meant by a time before the call: the hour that has just begun (a typed 08:05 for a call at 08:52
 * meaning 09:05), or the afternoon of a morning hour. Null where neither lies between the call and now.
 */
export function likelyMeant(at: string, callAt: string, now: string): string | null {
  const typed = Date.parse(at);
  const meant = [typed + hour, typed + 12 * hour].find(
    (candidate) => candidate >= Date.parse(callAt) && candidate <= Date.parse(now),
  );
  return meant === undefined ? null : new Date(meant).toISOString();
}

export function laterOf(one: string, other: string): string {
  return one < other ? other : one;
}
