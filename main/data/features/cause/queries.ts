import type { Handlers } from "../../context.ts";
import { rankForSubject } from "./rank-for-subject.ts";
import { similarFaults } from "./similar-faults.ts";
import { stepsOf, stepsOfVisit } from "./steps.ts";
import { findSubject } from "./subject.ts";

export const causeQueries: Handlers<"cause.rank" | "cause.path" | "cause.similar"> = {
  "cause.rank"(context, { noteId, ...about }) {
    const note = context.records.find("fault note", noteId);
    return rankForSubject(context, note, findSubject(context, about));
  },

  "cause.similar"(context, input) {
    return similarFaults(context, input);
  },

  "cause.path"(context, about) {
    const subject = findSubject(context, about);
    const { visitId } = about;
    return {
      steps:
        visitId === null ? stepsOf(context.store, subject) : stepsOfVisit(context.store, subject, visitId),
    };
  },
};
