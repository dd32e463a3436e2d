import type { Handlers } from "../../context.ts";
export const checkQueries = {} as Handlers<
  "check.plans" | "check.list" | "check.find" | "check.landingStates"
>;
