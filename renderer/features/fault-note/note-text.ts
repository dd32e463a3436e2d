import { calculatorById } from "#shared-lib/calculators/registry.ts";
import type { FaultNoteFields } from "#shared-lib/contract/fault-note.ts";
import { hazardWords } from "./hazard-parts.ts";
import { appliesWords, listWords, meaningWords } from "./note-words.ts";

export type NoteFieldName = keyof FaultNoteFields;

/** Words of a field, in the order in which they stand on the page. */
export const fieldLabels: { readonly [Name in NoteFieldName]: string } = {
  title: "Title",
  group: "Fault group",
  symptoms: "Symptoms",
  applies: "Applies",
  causes: "Causes",
  checks: "Checks",
  cautions: "Cautions",
  calculators: "Calculators",
  checkPlans: "Check plans",
  source: "Source",
};
export const noteFieldNames = Object.keys(fieldLabels) as NoteFieldName[];

/** One field as plain text, to be compared with another version of it. */
export function fieldText(name: NoteFieldName, fields: FaultNoteFields): string {
  switch (name) {
    case "title":
    case "group":
    case "source":
      return fields[name];
    case "symptoms":
    case "cautions":
      return fields[name].join("\n");
    case "checkPlans":
      return fields.checkPlans.join(", ");
    case "applies":
      return appliesWords(fields);
    case "causes":
      return fields.causes.map(causeText).join("\n\n");
    case "checks":
      return fields.checks.map((check, index) => checkText(check, index, fields.causes)).join("\n\n");
    case "calculators":
      return fields.calculators.map(calculatorText).join("\n");
  }
}

function causeText(cause: FaultNoteFields["causes"][number], index: number): string {
  return [
    `${index + 1} ${cause.title}`,
    cause.tell === "" ? "" : `How to tell: ${cause.tell}`,
    cause.fix === "" ? "" : `Fix: ${cause.fix}`,
    cause.caution === undefined ? "" : `Caution: ${cause.caution}`,
    cause.source === undefined ? "" : `Source: ${cause.source}`,
  ]
    .filter((line) => line !== "")
    .join("\n");
}

type Check = FaultNoteFields["checks"][number];

function checkText(check: Check, index: number, causes: FaultNoteFields["causes"]): string {
  return [
    `${index + 1} ${check.title}, ${check.minutes} min`,
    check.how,
    check.hazard === "none" ? "" : hazardWords[check.hazard],
    check.caution === undefined ? "" : `Caution: ${check.caution}`,
    ...check.outcomes.map((outcome) => {
      const meaning = outcomeWords(outcome, causes);
      return meaning === "" ? `– ${outcome.words}` : `– ${outcome.words}: ${meaning}`;
    }),
  ]
    .filter((line) => line !== "")
    .join("\n");
}

const meaningOrder = ["proves", "likely", "unlikely", "excludes"] as const;

/** "proves 1; rules out 2 and 3": what an outcome says about the causes, by their numbers. */
export function outcomeWords(outcome: Check["outcomes"][number], causes: FaultNoteFields["causes"]): string {
  return meaningOrder
    .flatMap((meaning) => {
      const numbers = causes.flatMap(({ key }, index) => (outcome.means[key] === meaning ? [index + 1] : []));
      return numbers.length === 0 ? [] : [`${meaningWords[meaning]} ${listWords(numbers)}`];
    })
    .join("; ");
}

function calculatorText(link: FaultNoteFields["calculators"][number]): string {
  const name = calculatorById(link.id)?.name ?? link.id;
  const preset = Object.entries(link.preset).map(([key, value]) => `${key} ${JSON.stringify(value)}`);
  return [name, link.why, ...preset].filter((part) => part !== "").join("; ");
}
