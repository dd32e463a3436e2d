import { formatStoredDay } from "#shared-lib/format.ts";

/** First days to choose from, as days of the local calendar, shortest way back first. */
export function sinceDays(
  now: Date,
): { readonly id: string; readonly words: string; readonly note: string }[] {
  const back = (months: number, days: number): string => {
    const day = new Date(now.getFullYear(), now.getMonth() - months, now.getDate() - days);
    const two = (value: number): string => String(value).padStart(2, "0");
    return `${day.getFullYear()}-${two(day.getMonth() + 1)}-${two(day.getDate())}`;
  };
  return [
    ["Last 30 days", back(0, 30)] as const,
    ["Last 6 months", back(6, 0)] as const,
    ["Last 12 months", back(12, 0)] as const,
    ["Last 2 years", back(24, 0)] as const,
    ["Last 5 years", back(60, 0)] as const,
  ].map(([words, id]) => ({ id, words, note: `since ${formatStoredDay(id)}` }));
}
