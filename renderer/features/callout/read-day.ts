import { readTime } from "#shared-lib/time-words.ts";

const dayMilliseconds = 24 * 60 * 60 * 1000;

/**
 * A day still to come as people type it, in the local time of the machine: "27 Nov", "2026-11-27", "tomorrow",
 * "in 3 days", "Mon". Returned as stored ("2026-11-27"); null where the text means none.
 */
export function readDay(text: string, now: Date): string | null {
  const words = text.trim().toLowerCase();
  if (words === "") return null;
  if (words === "today") return storedDay(now);
  if (words === "tomorrow") return storedDay(new Date(now.getTime() + dayMilliseconds));
  const ahead = /^in (\d{1,3}) (days?|weeks?)$/.exec(words);
  if (ahead?.[1] !== undefined) {
    const days = Number(ahead[1]) * (ahead[2]?.startsWith("week") ? 7 : 1);
    return storedDay(new Date(now.getTime() + days * dayMilliseconds));
  }
  const reading = readTime(`${text} 23:59`, now, "future");
  return reading.kind === "moment" ? storedDay(new Date(reading.at)) : null;
}

function storedDay(date: Date): string {
  const two = (value: number) => String(value).padStart(2, "0");
  return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`;
}
