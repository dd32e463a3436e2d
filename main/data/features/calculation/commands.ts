import type { Handlers } from "../../context.ts";
export const calculationCommands = {} as Handlers<"calculation.save">;
