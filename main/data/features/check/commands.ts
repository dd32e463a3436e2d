import type { Handlers } from "../../context.ts";
export const checkCommands = {} as Handlers<"check.start" | "check.recordStep" | "check.finish">;
