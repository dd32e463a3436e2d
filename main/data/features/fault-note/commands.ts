import type { Handlers } from "../../context.ts";
export const faultNoteCommands = {} as Handlers<
  | "faultNote.write"
  | "faultNote.change"
  | "faultNote.confirm"
  | "faultNote.withdraw"
  | "faultNote.backToDraft"
>;
