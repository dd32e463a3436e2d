import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { calculatorById } from "#shared-lib/calculators/registry.ts";
import { faultNoteFieldsSchema } from "#shared-lib/contract/fault-note.ts";
import type { StarterNote } from "#shared-lib/starter-note.ts";
import { starterNoteBasis, starterNoteCheckPlans, starterNoteSchema } from "#shared-lib/starter-note.ts";
import { driveKinds, faultGroups } from "#shared-lib/words.ts";
import { capitalisedWordsAllowed, reviewedSentences } from "./reviewed-sentences.ts";

const folder = new URL("../../../main/data/starter-notes/", import.meta.url);
const files = readdirSync(folder).filter((name) => name.endsWith(".json"));
const raw = files.map((name) => ({
  name,
  json: JSON.parse(readFileSync(new URL(name, folder), "utf8")) as unknown,
}));
const parsed = raw.map(({ name, json }) => ({ name, result: starterNoteSchema.safeParse(json) }));
const notes: StarterNote[] = parsed.flatMap(({ result }) => (result.success ? [result.data] : []));

/** Everything a note tells people to look at or to do: all its sentences but the symptoms, which quote callers. */
function advice(note: StarterNote): string[] {
  return [
    note.title,
    note.applies.words ?? "",
    note.source,
    ...note.cautions,
    ...note.calculators.map((link) => link.why),
    ...note.causes.flatMap((cause) => [
      cause.title,
      cause.tell,
      cause.fix,
      cause.caution ?? "",
      cause.source ?? "",
    ]),
    ...note.checks.flatMap((check) => [
      check.title,
      check.how,
      check.caution ?? "",
      ...check.outcomes.map((outcome) => outcome.words),
    ]),
  ].filter((text) => text !== "");
}

function sentencesOf(text: string): string[] {
  return text.split(/(?<=[.!?])\s+(?=[A-Z])/).map((sentence) => sentence.trim());
}

function adviceSentences(note: StarterNote): string[] {
  return advice(note).flatMap(sentencesOf);
}

/** Words that could suggest defeating a protection. Each sentence with one of them is read by a person and listed. */
const dangerousWords =
  /\b(bridg\w*|jumper\w*|link(s|ed|ing)?( out| across)?|shunt\w*|defeat\w*|by-?pass\w*|overrid\w*|wedg\w*|disabl\w*|tie[ds]?|short(ed|ing)? out|forc(e|ed|es|ing) (it|the|a|an|open|doors?)|hold[s]? in|push(ed|es)? in|raise[ds]?|larger fuse|unsupported|under (a|the) car|open(s|ed|ing)? the brake|brake (open|off))\b/i;

function suspicious(sentence: string): boolean {
  return dangerousWords.test(sentence) && !reviewedSentences.has(sentence);
}

const valueWithUnit =
  /\d\s*(mm|cm|m|m\/s|m\/s²|V|mV|A|mA|ohm|kohm|Mohm|kg|g|s|ms|lux|N|J|K|bar|Hz|%|°C|degrees|minutes?|hours?|days?|weeks?)(?![A-Za-z])/;

function valueWithoutSource(sentence: string): boolean {
  return valueWithUnit.test(sentence) && !/common practice/i.test(sentence) && !/EN \d+/.test(sentence);
}

describe("starter note files", () => {
  it("all fit the schema", () => {
    const failures = parsed.flatMap(({ name, result }) =>
      result.success
        ? []
        : [`${name}: ${result.error.issues.map((i) => `${i.path.join(".")} ${i.message}`).join("; ")}`],
    );
    expect(failures).toEqual([]);
    expect(notes.length).toBeGreaterThanOrEqual(120);
  });

  it("fit what a fault note of the contract can hold", () => {
    for (const note of notes) {
      const { key, basis, ...fields } = note;
      expect(faultNoteFieldsSchema.safeParse(fields).error?.issues ?? [], `${key} (${basis})`).toEqual([]);
    }
  });

  it("are named by their key, each key once", () => {
    expect(notes.map((note) => `${note.key}.json`).sort()).toEqual([...files].sort());
    for (const note of notes) {
      const titles = notes.filter((other) => other.title === note.title);
      expect(titles, note.title).toHaveLength(1);
      expect(note.basis).toBe(starterNoteBasis);
    }
  });

  it("cover every fault group and every drive", () => {
    for (const group of faultGroups) {
      expect(
        notes.some((note) => note.group === group),
        group,
      ).toBe(true);
    }
    for (const group of ["doors", "position and zone sensing"] as const) {
      expect(notes.filter((note) => note.group === group).length, group).toBeGreaterThanOrEqual(3);
    }
    for (const drive of driveKinds) {
      expect(
        notes.some((note) => note.applies.drives.includes(drive)),
        drive,
      ).toBe(true);
    }
    expect(notes.some((note) => /commissioning/i.test(note.applies.words ?? ""))).toBe(true);
  });
});

describe("causes and checks of the starter notes", () => {
  it("have keys that are unique within their note", () => {
    for (const note of notes) {
      const lists = [
        note.causes.map((cause) => cause.key),
        note.checks.map((check) => check.key),
        ...note.checks.map((check) => check.outcomes.map((outcome) => outcome.key)),
      ];
      for (const keys of lists) expect(new Set(keys).size, `${note.key}: ${keys}`).toBe(keys.length);
    }
  });

  it("speak only of causes that exist, and leave no cause untouched", () => {
    for (const note of notes) {
      const causes = new Set(note.causes.map((cause) => cause.key));
      const meanings = note.checks.flatMap((check) =>
        check.outcomes.flatMap((outcome) => Object.entries(outcome.means)),
      );
      expect(
        meanings.filter(([cause]) => !causes.has(cause)),
        note.key,
      ).toEqual([]);
      const touched = new Set(
        meanings.filter(([, meaning]) => meaning !== "neutral").map(([cause]) => cause),
      );
      expect(
        [...causes].filter((cause) => !touched.has(cause)),
        note.key,
      ).toEqual([]);
    }
  });

  it("let no outcome settle two causes, and let each check tell causes apart", () => {
    for (const note of notes) {
      for (const check of note.checks) {
        for (const outcome of check.outcomes) {
          const proved = Object.values(outcome.means).filter((meaning) => meaning === "proves");
          expect(proved.length, `${note.key} ${check.key} ${outcome.key}`).toBeLessThanOrEqual(1);
        }
        const distinct = new Set(
          check.outcomes.map((outcome) =>
            note.causes.map((cause) => outcome.means[cause.key] ?? "neutral").join(),
          ),
        );
        expect(distinct.size, `${note.key} ${check.key}`).toBeGreaterThan(1);
      }
    }
  });
});

describe("the words of the starter notes", () => {
  it("give at least three different phrasings of the symptom, one of them in other regions' words", () => {
    const regional = /\b(elevator|hoistway|cab|hall|leveling|interlock)\b/i;
    for (const note of notes) {
      expect(new Set(note.symptoms.map((symptom) => symptom.toLowerCase())).size, note.key).toBe(
        note.symptoms.length,
      );
      expect(
        note.symptoms.some((symptom) => regional.test(symptom)),
        note.key,
      ).toBe(true);
    }
  });

  it("are sentences that can be read on a landing", () => {
    const tooLong = notes.flatMap((note) =>
      adviceSentences(note)
        .filter((sentence) => sentence.split(/\s+/).length > 40)
        .map((sentence) => `${note.key}: ${sentence}`),
    );
    expect(tooLong).toEqual([]);
    const unfinished = notes.flatMap((note) =>
      [
        ...note.cautions,
        ...note.causes.flatMap((cause) => [cause.tell, cause.fix]),
        ...note.checks.map((check) => check.how),
      ]
        .filter((text) => !/[.!?]$/.test(text))
        .map((text) => `${note.key}: ${text}`),
    );
    expect(unfinished).toEqual([]);
  });

  it("name no maker and no code: capitals within a sentence are only the listed ones", () => {
    const strange = notes.flatMap((note) =>
      adviceSentences(note).flatMap((sentence) =>
        [...sentence.matchAll(/(?<=[a-z0-9,;:)] )[A-Z][A-Za-z]*|\b[A-Z]+-?\d{2,}\b/g)]
          .map(([word]) => word)
          .filter((word) => !capitalisedWordsAllowed.has(word))
          .map((word) => `${note.key}: ${word} in: ${sentence}`),
      ),
    );
    expect(strange).toEqual([]);
  });
});

describe("links from the starter notes", () => {
  it("open a calculator that exists, with inputs it knows", () => {
    for (const note of notes) {
      for (const link of note.calculators) {
        const where = `${note.key} ${link.id}`;
        const calculator = calculatorById(link.id);
        expect(calculator, where).toBeDefined();
        expect(calculator?.schema.safeParse(link.preset).error?.issues ?? [], where).toEqual([]);
      }
    }
  });

  it("give each built-in check plan at least one note that leads to it", () => {
    const plans = new Set(notes.flatMap((note) => note.checkPlans));
    expect([...plans].sort()).toEqual([...starterNoteCheckPlans].sort());
  });
});

describe("values in the starter notes", () => {
  it("carry a clause or are marked as common practice", () => {
    const bare = notes.flatMap((note) =>
      adviceSentences(note)
        .filter(valueWithoutSource)
        .map((sentence) => `${note.key}: ${sentence}`),
    );
    expect(bare).toEqual([]);
  });

  it("name the edition of a standard and send the reader to the current text", () => {
    const vague = notes.flatMap((note) =>
      adviceSentences(note)
        .filter((sentence) => /\bEN \d/.test(sentence))
        .filter(
          (sentence) => !/EN \d+(-\d+)?:\d{4}/.test(sentence) || !/check the current text/.test(sentence),
        )
        .map((sentence) => `${note.key}: ${sentence}`),
    );
    expect(vague).toEqual([]);
  });

  it("are found by the rule that looks for them", () => {
    expect(valueWithoutSource("The gap is 3 mm here.")).toBe(true);
    expect(valueWithoutSource("As common practice the gap is 3 mm.")).toBe(false);
    expect(valueWithoutSource("Look at 3 landings.")).toBe(false);
  });
});

describe("safety of the starter notes", () => {
  it("suggest nothing that defeats a protection: every sentence with such a word was read and is listed", () => {
    const unread = notes.flatMap((note) =>
      adviceSentences(note)
        .filter(suspicious)
        .map((sentence) => `${note.key}: ${sentence}`),
    );
    expect(unread).toEqual([]);
  });

  it("keep no sentence on the reviewed list that is no longer written", () => {
    const written = new Set(notes.flatMap(adviceSentences));
    expect([...reviewedSentences].filter((sentence) => !written.has(sentence))).toEqual([]);
  });

  it("would be stopped by the rule: it finds bad advice", () => {
    for (const bad of [
      "Bridge out the door contact to see whether it runs.",
      "Use a jumper for the test.",
      "Link out the lock.",
      "Push in the contactor by hand.",
      "Wedge the landing door.",
      "Override the limit.",
    ]) {
      expect(suspicious(bad), bad).toBe(true);
    }
  });
});

describe("hazards of the starter checks", () => {
  it("measure live only as trained people with a rated low-impedance meter", () => {
    for (const note of notes) {
      for (const check of note.checks) {
        const where = `${note.key} ${check.key}`;
        if (check.hazard === "live")
          expect(check.caution, where).toMatch(/trained people.*rated low-impedance meter/);
        if (check.hazard === "isolated") expect(check.caution, where).toMatch(/prove dead/i);
        if (check.hazard === "shaft") expect(check.caution, where).toMatch(/prove/i);
      }
    }
  });

  it("measure resistance and insulation only on isolated parts", () => {
    for (const note of notes) {
      for (const check of note.checks) {
        const text = `${check.title} ${check.how}`;
        if (/\b(resistance|insulation|continuity|ohm)\b/i.test(text)) {
          expect(check.hazard, `${note.key} ${check.key}`).toBe("isolated");
        }
        if (/\b(measure|compare|follow)\b[^.]*\bvoltage\b/i.test(text)) {
          expect(check.hazard, `${note.key} ${check.key}`).toBe("live");
        }
      }
    }
  });

  it("do not begin with a live measurement, nor call shaft work or unplugging harmless", () => {
    for (const note of notes) {
      expect(note.checks[0]?.hazard, note.key).not.toBe("live");
      for (const check of note.checks.filter((one) => one.hazard === "none")) {
        expect(`${check.title} ${check.how}`, `${note.key} ${check.key}`).not.toMatch(
          /from the car top|pit access|into the pit|unplug/i,
        );
      }
    }
  });

  it("say what each dangerous group must say", () => {
    const required: Partial<Record<StarterNote["group"], RegExp>> = {
      hydraulics: /support/i,
      "governor and safety gear": /competent/i,
      brake: /maker/i,
      "suspension and traction": /competent|out of service/i,
      "safety chain": /out of service|register|reset/i,
      "not yet known": /out of service/i,
    };
    for (const note of notes) {
      const rule = required[note.group];
      if (rule) expect(note.cautions.join(" "), note.key).toMatch(rule);
    }
  });
});

describe("the schema of a starter note", () => {
  const good = () => structuredClone(notes[0]) as StarterNote;

  it("refuses a dangerous check without its caution", () => {
    const note = good();
    const [check] = note.checks;
    note.checks = [{ ...check, hazard: "live", caution: undefined } as StarterNote["checks"][number]];
    expect(starterNoteSchema.safeParse(note).success).toBe(false);
  });

  it("refuses unknown fields, unknown groups and a note with two symptoms", () => {
    expect(starterNoteSchema.safeParse(good()).success).toBe(true);
    expect(starterNoteSchema.safeParse({ ...good(), extra: 1 }).success).toBe(false);
    expect(starterNoteSchema.safeParse({ ...good(), group: "door" }).success).toBe(false);
    expect(starterNoteSchema.safeParse({ ...good(), symptoms: ["one here", "two here"] }).success).toBe(
      false,
    );
  });
});
