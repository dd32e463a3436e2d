import { calculatorById } from "#shared-lib/calculators/registry.ts";
import { type FaultNoteFields, faultNoteFieldsSchema } from "#shared-lib/contract/fault-note.ts";
import type { InputOf } from "#shared-lib/contract/operations.ts";
import { readNumber } from "#shared-lib/number-words.ts";
import type { FaultGroup } from "#shared-lib/words.ts";
import type { Meaning } from "./note-words.ts";

/** A line of a list, with a key so that it can be moved while somebody types in it. */
export interface TextLine {
  readonly key: string;
  readonly words: string;
}

export interface FormCause {
  readonly key: string;
  readonly title: string;
  readonly tell: string;
  readonly fix: string;
  readonly caution: string;
  readonly source: string;
}

export interface FormOutcome {
  readonly key: string;
  readonly words: string;
  readonly means: Readonly<Record<string, Meaning>>;
}

export interface FormCheck {
  readonly key: string;
  readonly title: string;
  readonly how: string;
  /** As typed. */
  readonly minutes: string;
  readonly caution: string;
  readonly hazard: FaultNoteFields["checks"][number]["hazard"];
  readonly outcomes: readonly FormOutcome[];
}

export type Preset = FaultNoteFields["calculators"][number]["preset"];

export interface FormCalculator {
  readonly key: string;
  readonly id: string;
  readonly why: string;
  readonly preset: Preset;
}

/** A fault note as it is typed: every text may be empty, every list has keys. Plain JSON, kept as a draft. */
export interface NoteForm {
  readonly title: string;
  readonly group: FaultGroup | null;
  readonly symptoms: readonly TextLine[];
  readonly drives: FaultNoteFields["applies"]["drives"];
  readonly doors: FaultNoteFields["applies"]["doors"];
  readonly controllerFamilies: readonly TextLine[];
  readonly appliesWords: string;
  readonly causes: readonly FormCause[];
  readonly checks: readonly FormCheck[];
  readonly cautions: readonly TextLine[];
  readonly calculators: readonly FormCalculator[];
  readonly checkPlans: readonly string[];
  readonly source: string;
}

export const emptyForm: NoteForm = {
  title: "",
  group: null,
  symptoms: [],
  drives: [],
  doors: [],
  controllerFamilies: [],
  appliesWords: "",
  causes: [],
  checks: [],
  cautions: [],
  calculators: [],
  checkPlans: [],
  source: "",
};

/** A key that no other record has: recorded fixes and answers of checks point to causes by theirs. */
export function newKey(): string {
  return crypto.randomUUID();
}

function toLines(words: readonly string[]): TextLine[] {
  return words.map((one, index) => ({ key: `line ${index}`, words: one }));
}

/** The fields of a stored note, without what the program itself keeps about it. */
export function fieldsOf(note: FaultNoteFields): FaultNoteFields {
  return faultNoteFieldsSchema.parse(note);
}

export function toForm(fields: FaultNoteFields): NoteForm {
  return {
    title: fields.title,
    group: fields.group,
    symptoms: toLines(fields.symptoms),
    drives: fields.applies.drives,
    doors: fields.applies.doors,
    controllerFamilies: toLines(fields.applies.controllerFamilies),
    appliesWords: fields.applies.words,
    causes: fields.causes.map(({ caution = "", source = "", ...cause }) => ({ ...cause, caution, source })),
    checks: fields.checks.map(({ caution = "", minutes, ...check }) => ({
      ...check,
      caution,
      minutes: String(minutes),
    })),
    cautions: toLines(fields.cautions),
    calculators: fields.calculators.map((link, index) => ({ key: `calculator ${index}`, ...link })),
    checkPlans: fields.checkPlans,
    source: fields.source,
  };
}

/** Without entries that hold nothing at all; everything typed stays. */
export function withoutEmptyEntries(form: NoteForm): NoteForm {
  const filled = (...words: readonly string[]): boolean => words.some((one) => one.trim() !== "");
  const lines = (list: readonly TextLine[]) => list.filter(({ words }) => filled(words));
  const causes = form.causes.filter((one) => filled(one.title, one.tell, one.fix, one.caution, one.source));
  return {
    ...form,
    symptoms: lines(form.symptoms),
    controllerFamilies: lines(form.controllerFamilies),
    cautions: lines(form.cautions),
    causes,
    checks: form.checks
      .map((check) => ({ ...check, outcomes: check.outcomes.filter(({ words }) => filled(words)) }))
      .filter((one) => filled(one.title, one.how, one.caution) || one.outcomes.length > 0),
    calculators: form.calculators.filter(({ id }) => id !== ""),
  };
}

/** The form as the contract takes it. What a check says about a cause that is gone goes with it. */
export function toInput(form: NoteForm): InputOf<"faultNote.write"> {
  const causeKeys = new Set(form.causes.map(({ key }) => key));
  const words = (lines: readonly TextLine[]) => lines.map((line) => line.words.trim());
  const given = (name: "caution" | "source", text: string) => (text.trim() === "" ? {} : { [name]: text });
  return {
    title: form.title,
    // Left empty it is refused with a sentence at the field.
    group: form.group as FaultGroup,
    symptoms: words(form.symptoms),
    applies: {
      drives: [...form.drives],
      doors: [...form.doors],
      controllerFamilies: words(form.controllerFamilies),
      words: form.appliesWords,
    },
    causes: form.causes.map(({ caution, source, ...cause }) => ({
      ...cause,
      ...given("caution", caution),
      ...given("source", source),
    })),
    checks: form.checks.map(({ caution, minutes, outcomes, ...check }) => ({
      ...check,
      minutes: minutesOf(minutes) ?? Number.NaN,
      ...given("caution", caution),
      outcomes: outcomes.map((outcome) => ({
        ...outcome,
        means: Object.fromEntries(Object.entries(outcome.means).filter(([key]) => causeKeys.has(key))),
      })),
    })),
    cautions: words(form.cautions),
    calculators: form.calculators.map(({ key: _key, ...link }) => link),
    checkPlans: [...form.checkPlans],
    source: form.source,
  };
}

function minutesOf(text: string): number | null {
  const reading = readNumber(text);
  return reading.kind === "number" ? reading.number : null;
}

export type FormReading =
  | { readonly kind: "fields"; readonly fields: FaultNoteFields }
  /** Sentences by the path of the field: "causes.0.title". */
  | { readonly kind: "problems"; readonly problems: ReadonlyMap<string, string> };

/** Checks the form as the program will, so that the sentence stands at the field. */
export function readForm(form: NoteForm): FormReading {
  const parsed = faultNoteFieldsSchema.safeParse(toInput(form));
  const problems = presetProblems(form);
  if (parsed.success && problems.size === 0) return { kind: "fields", fields: parsed.data };
  for (const issue of parsed.error?.issues ?? []) {
    problems.set(issue.path.join("."), problemWords(issue.path, issue));
  }
  return { kind: "problems", problems };
}

/** A preset that the calculator would refuse is said here, not when somebody stands at the lift with it. */
function presetProblems(form: NoteForm): Map<string, string> {
  const problems = new Map<string, string>();
  for (const [index, link] of form.calculators.entries()) {
    const calculator = calculatorById(link.id);
    const parsed = calculator?.schema.safeParse(link.preset);
    for (const issue of parsed?.error?.issues ?? []) {
      const key = String(issue.path[0] ?? "");
      const label = calculator?.inputs.find((input) => input.key === key)?.label ?? key;
      problems.set(`calculators.${index}.preset.${key}`, `${label} is not what the calculator takes.`);
    }
  }
  return problems;
}

function problemWords(
  path: readonly PropertyKey[],
  issue: { readonly code?: string; readonly maximum?: unknown },
): string {
  const field = path.at(-1);
  if (field === "group") return "Choose the fault group; “not yet known” is one of them.";
  if (field === "minutes") return "Minutes are a number from 0 to 600.";
  if (issue.code === "too_big") {
    return typeof path.at(-1) === "number" || typeof field === "string"
      ? `Too long: at most ${String(issue.maximum)} are kept. Nothing was cut.`
      : `At most ${String(issue.maximum)} of these.`;
  }
  if (field === "title") return "A title is needed: what it is, in one line.";
  if (field === "words") return "Say in words what is seen.";
  return "Something is needed here, or take the entry away.";
}

/** `items` with the one at `from` moved by `step`; the same list where it cannot go further. */
export function moved<Item>(items: readonly Item[], from: number, step: 1 | -1): readonly Item[] {
  const to = from + step;
  const item = items[from];
  if (item === undefined || to < 0 || to >= items.length) return items;
  const rest = items.filter((_, index) => index !== from);
  return [...rest.slice(0, to), item, ...rest.slice(to)];
}

/** `items` with the one at `at` changed. */
export function changed<Item>(items: readonly Item[], at: number, change: Partial<Item>): readonly Item[] {
  return items.map((item, index) => (index === at ? { ...item, ...change } : item));
}

export function without<Item>(items: readonly Item[], at: number): readonly Item[] {
  return items.filter((_, index) => index !== at);
}
