import type { Handlers } from "../../context.ts";
export const visitQueries = {} as Handlers<"visit.list" | "visit.find" | "fix.find">;
