import { expect, test } from "vitest";
import {
  emptyCallout,
  newCalloutProblems,
  toLogInput,
} from "../../../renderer/features/desk/new-callout-draft.ts";

test("people inside can be saved before any word is typed: that is what is written down", () => {
  const draft = { ...emptyCallout, liftText: "the lift in the tower", inside: "people inside" } as const;
  expect(newCalloutProblems(draft)).toEqual({});
  expect(toLogInput(draft, null)).toMatchObject({ said: "People inside", inside: "people inside" });
  expect(toLogInput({ ...draft, said: " stuck at 3 " }, null).said).toBe("stuck at 3");
});

test("with nobody inside the words are asked for", () => {
  const draft = { ...emptyCallout, liftText: "the lift in the tower", inside: "nobody" } as const;
  expect(newCalloutProblems(draft)).toEqual({ said: "Write down what the caller says." });
});
