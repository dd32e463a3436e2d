import type { Handlers } from "../../context.ts";
export const calculationQueries = {} as Handlers<
  "calculator.list" | "calculator.compute" | "calculator.prefill" | "calculation.list"
>;
