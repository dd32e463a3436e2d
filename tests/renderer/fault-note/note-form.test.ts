import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type FaultNoteFields, faultNoteFieldsSchema } from "#shared-lib/contract/fault-note.ts";
import { doorKinds, driveKinds, faultGroups } from "#shared-lib/words.ts";
import { startFromFix, startFromWords } from "../../../renderer/features/fault-note/new-note-start.ts";
import {
  emptyForm,
  moved,
  readForm,
  toForm,
  withoutEmptyEntries,
} from "../../../renderer/features/fault-note/note-form.ts";
import { changedFields, compareVersions } from "../../../renderer/features/fault-note/note-merge.ts";

const line = fc.string({ minLength: 1, maxLength: 60 }).map((text) => `a${text.trim()}z`);
const free = fc.string({ maxLength: 80 }).map((text) => text.trim());
const causeKeys = ["one", "two", "three"];

const fields: fc.Arbitrary<FaultNoteFields> = fc
  .record({
    title: line,
    group: fc.constantFrom(...faultGroups),
    symptoms: fc.array(line, { maxLength: 4 }),
    applies: fc.record({
      drives: fc.uniqueArray(fc.constantFrom(...driveKinds)),
      doors: fc.uniqueArray(fc.constantFrom(...doorKinds)),
      controllerFamilies: fc.array(line, { maxLength: 3 }),
      words: free,
    }),
    causes: fc.uniqueArray(
      fc.record(
        { key: fc.constantFrom(...causeKeys), title: line, tell: free, fix: free, caution: line },
        { requiredKeys: ["key", "title", "tell", "fix"] },
      ),
      { selector: ({ key }) => key },
    ),
    cautions: fc.array(line, { maxLength: 3 }),
    calculators: fc.constantFrom([], [{ id: "zone-sensors", preset: { measured: "order" }, why: "" }]),
    checkPlans: fc.constantFrom([], ["zone-sensors"]),
    source: free,
  })
  .chain((note) =>
    fc
      .array(
        fc.record({
          key: fc.uuid(),
          title: line,
          how: free,
          minutes: fc.integer({ min: 0, max: 600 }),
          hazard: fc.constantFrom("none" as const, "shaft" as const),
          outcomes: fc.array(
            fc.record({
              key: fc.uuid(),
              words: line,
              means: fc.constant(Object.fromEntries(note.causes.map(({ key }) => [key, "likely" as const]))),
            }),
            { maxLength: 3 },
          ),
        }),
        { maxLength: 3 },
      )
      .map((checks) => faultNoteFieldsSchema.parse({ ...note, checks })),
  );

test("a note that is opened in its form and saved unchanged is the same note", () => {
  fc.assert(
    fc.property(fields, (note) => {
      const stored = faultNoteFieldsSchema.parse(note);
      const reading = readForm(withoutEmptyEntries(toForm(stored)));
      expect(reading).toEqual({ kind: "fields", fields: stored });
      if (reading.kind === "fields") expect(changedFields(stored, reading.fields)).toEqual({});
    }),
  );
});

describe("reading the form", () => {
  const good = { ...emptyForm, title: "Lift stops short", group: "doors" as const };

  test("says at the field what is missing", () => {
    const reading = readForm({
      ...emptyForm,
      causes: [{ key: "k", title: "", tell: "seen so", fix: "", caution: "", source: "" }],
    });
    expect(reading.kind === "problems" && [...reading.problems.keys()].sort()).toEqual([
      "causes.0.title",
      "group",
      "title",
    ]);
  });

  test("refuses minutes that are no number and a preset the calculator would refuse", () => {
    const check = { key: "c", title: "Look", how: "", caution: "", hazard: "none" as const, outcomes: [] };
    const reading = readForm({
      ...good,
      checks: [{ ...check, minutes: "soon" }],
      calculators: [{ key: "1", id: "zone-sensors", why: "", preset: { measured: "by eye" } }],
    });
    expect(reading.kind === "problems" && [...reading.problems.keys()].sort()).toEqual([
      "calculators.0.preset.measured",
      "checks.0.minutes",
    ]);
  });

  test("drops only entries that hold nothing", () => {
    const blank = { key: "b", title: " ", tell: "", fix: "", caution: "", source: "" };
    const form = withoutEmptyEntries({ ...good, causes: [blank, { ...blank, key: "c", fix: "tighten it" }] });
    expect(form.causes.map(({ key }) => key)).toEqual(["c"]);
  });

  test("what a check says about a cause that was taken away goes with it", () => {
    const outcome = { key: "o", words: "seen", means: { gone: "proves" as const } };
    const check = { key: "c", title: "Look", how: "", minutes: "5", caution: "", hazard: "none" as const };
    const reading = readForm({ ...good, checks: [{ ...check, outcomes: [outcome] }] });
    expect(reading.kind === "fields" && reading.fields.checks[0]?.outcomes[0]?.means).toEqual({});
  });
});

test("an entry moves by one place and not over the ends", () => {
  expect(moved(["a", "b", "c"], 2, -1)).toEqual(["a", "c", "b"]);
  expect(moved(["a", "b", "c"], 0, 1)).toEqual(["b", "a", "c"]);
  const list = ["a", "b"];
  expect(moved(list, 0, -1)).toBe(list);
  expect(moved(list, 1, 1)).toBe(list);
});

describe("two versions of one note", () => {
  const base = faultNoteFieldsSchema.parse({ title: "Base", group: "doors", symptoms: ["reopens"] });

  test("only what both could overwrite is put side by side; the rest is kept", () => {
    const mine = { ...base, title: "Mine" };
    const theirs = { ...base, title: "Theirs", symptoms: ["reopens", "slams"], source: "seen on site" };
    expect(compareVersions(base, mine, theirs)).toEqual({
      fields: [{ label: "Title", mine: "Mine", theirs: "Theirs" }],
      kept: ["Symptoms", "Source"],
    });
    expect(changedFields(base, mine)).toEqual({ title: "Mine" });
  });

  test("the same change on both sides is no difference", () => {
    const both = { ...base, title: "Both" };
    expect(compareVersions(base, both, both)).toEqual({ fields: [], kept: [] });
  });
});

describe("a new note", () => {
  test("from words that found nothing has them as its first symptom", () => {
    expect(startFromWords("  hums at night ").symptoms.map(({ words }) => words)).toEqual(["hums at night"]);
    expect(startFromWords(" ")).toEqual(emptyForm);
  });

  test("from a recorded fix has its cause, its fix, and what the caller said", () => {
    const form = startFromFix({ cause: "Leads swapped", fix: "Put back", group: "doors" }, "overshoots");
    expect(form).toMatchObject({
      title: "Leads swapped",
      group: "doors",
      symptoms: [{ words: "overshoots" }],
      causes: [{ title: "Leads swapped", fix: "Put back" }],
    });
    expect(readForm(form).kind).toBe("fields");
  });

  test("a cause too long for a line loses no word", () => {
    const cause = "worn ".repeat(100).trim();
    const [only] = startFromFix({ cause, fix: "x", group: "doors" }, null).causes;
    expect(only).toMatchObject({ title: "", tell: cause });
  });
});
