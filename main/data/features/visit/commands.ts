import type { Handlers } from "../../context.ts";
export const visitCommands = {} as Handlers<"visit.record" | "visit.change" | "fix.attach">;
