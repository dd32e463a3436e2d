import type { Handlers } from "../../context.ts";
export const reviewQueries = {} as Handlers<
  "review.repeats" | "review.counts" | "review.withoutCause" | "review.notesUsed" | "review.attention"
>;
