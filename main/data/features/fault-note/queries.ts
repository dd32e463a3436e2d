import type { Handlers } from "../../context.ts";
export const faultNoteQueries = {} as Handlers<"faultNote.list" | "faultNote.find" | "faultNote.suggest">;
