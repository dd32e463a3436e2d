import type { ProgramEvent } from "#shared-lib/contract/operation.ts";
import type { Signer } from "../context.ts";
import { type BatchAsk, DataCore } from "../data-core.ts";
import type { SqliteFile } from "../sqlite-disk/sqlite-file.ts";
import { installStarterNotes } from "../starter-notes/install-starter-notes.ts";
import { starterNotesSql } from "./demonstration.sql.ts";
import { companyName, demonstrationPeople, demonstrationSites } from "./demonstration-company.ts";
import { kittiwakeLift2, liftOfPlan } from "./lift-of-plan.ts";
import { openBridgeStory } from "./open-bridge-story.ts";
import { type Happening, playCallout, type Signers } from "./play-callout.ts";
import { type DemonstrationLift, type DemonstrationNote, randomCallouts } from "./random-callouts.ts";
import { SeededRandom } from "./seeded-random.ts";
import { storyCallouts } from "./stories.ts";

export interface DemonstrationOptions {
  readonly folder: string;
  readonly programVersion: string;
  /** The demonstration ends now: its open callouts are minutes old. Milliseconds since 1970. */
  readonly now: number;
  readonly emit?: (event: ProgramEvent) => void;
}

const seed = 20_261_124;
const everydayCallouts = 560;
const minute = 60_000;
const day = 24 * 60 * minute;

/**
 * Fills an empty database with the invented company: two years of callouts through the ordinary operations, each at
 * its own time, all in one transaction. The same seed and the same `now` give the same company.
 */
export function fillDemonstration(file: SqliteFile, options: DemonstrationOptions): void {
  const begin = options.now - 730 * day;
  let clock = begin - 30 * day;
  const core = new DataCore(file, {
    folder: options.folder,
    programVersion: options.programVersion,
    wallClock: () => clock,
    shortCode: "A",
  });
  installStarterNotes(core);
  const random = new SeededRandom(seed);
  core.batch((ask) => {
    const people = makePeople(ask);
    const lifts = makeLifts(ask, people, random);
    const notes = readNotes(file);
    const signers = signersOf(people, notes);
    const story = storyFrame(options.now, random, lifts, notes, people);
    const planned = [
      ...randomCallouts(random, {
        count: everydayCallouts,
        from: begin,
        until: options.now - 2 * day,
        lifts: [...lifts.values()],
        notes,
        engineers: [...people.values()]
          .filter((person) => person.role === "engineer")
          .map((person) => person.id),
      }),
      ...storyCallouts(story),
    ];
    const happenings = [
      ...planned.flatMap((plan) => playCallout(plan, signers)),
      ...openBridgeStory(story, signers),
    ];
    playInOrder(ask, happenings, options, (at) => {
      clock = at;
    });
    core.device.write("demonstration", true);
    core.device.write("person.chosen", people.get("Orla Vance")?.id);
  });
}

function playInOrder(
  ask: BatchAsk,
  happenings: Happening[],
  options: DemonstrationOptions,
  setClock: (at: number) => void,
): void {
  const inOrder = happenings.filter(({ at }) => at <= options.now).sort((one, other) => one.at - other.at);
  for (const [index, happening] of inOrder.entries()) {
    setClock(happening.at);
    happening.happen(ask);
    if (index % 200 === 0) {
      options.emit?.({
        kind: "progress",
        work: "demonstration",
        done: index,
        of: inOrder.length,
        words: "Preparing the demonstration company",
      });
    }
  }
}

type Person = Signer & { readonly role: string };

function makePeople(ask: BatchAsk): Map<string, Person> {
  const people = new Map<string, Person>();
  const [first, ...others] = demonstrationPeople;
  if (!first) throw new Error("the demonstration company has nobody");
  const started = ask(
    "company.start",
    { companyName, personName: first.name, role: first.role, telephone: first.telephone ?? "" },
    null,
  );
  people.set(first.name, { id: started.personId, name: first.name, role: first.role });
  for (const person of others) {
    const { id } = ask("person.add", person, { id: started.personId, name: first.name });
    people.set(person.name, { id, name: person.name, role: person.role });
  }
  return people;
}

function makeLifts(
  ask: BatchAsk,
  people: Map<string, Person>,
  random: SeededRandom,
): Map<string, DemonstrationLift> {
  const lifts = new Map<string, DemonstrationLift>();
  const lead = people.get("Hedda Quill") ?? null;
  for (const { site, callers, lifts: plans } of demonstrationSites) {
    const siteId = ask("site.add", site, lead).id;
    for (const plan of plans) {
      const title = `${site.name}, ${plan.name}`;
      const special = title === "Kittiwake House, Lift 2" ? kittiwakeLift2 : {};
      const { id } = ask("lift.add", { ...liftOfPlan(plan, siteId, random), ...special }, lead);
      addSignals(ask, id, lead, random);
      const found = ask("lift.find", { id }, null);
      lifts.set(title, {
        id,
        title,
        driveKind: found.lift.driveKind ?? "geared traction",
        trouble: plan.trouble,
        callers,
        telephone: site.contactTelephone ?? "",
        landingIds: found.landings.map((landing) => landing.id),
      });
    }
  }
  return lifts;
}

/** Terminal markings are as on that site's drawing: here plain running numbers. */
function addSignals(ask: BatchAsk, liftId: string, person: Signer | null, random: SeededRandom): void {
  const first = random.integer(11, 60);
  const roles = [
    "upper zone sensor",
    "lower zone sensor",
    "up slowdown switch",
    "down slowdown switch",
    "car door contact",
    "inspection switch",
  ] as const;
  for (const [index, role] of roles.entries()) {
    ask(
      "signal.add",
      { liftId, name: role, role, marking: String(first + index), activeLevel: "high" },
      person,
    );
  }
}

function readNotes(file: SqliteFile): DemonstrationNote[] {
  return file
    .all<Record<"id" | "starterKey" | "faultGroup" | "symptoms" | "causes" | "applies", string>>(
      starterNotesSql,
    )
    .map((row) => ({
      id: row.id,
      starterKey: row.starterKey,
      faultGroup: row.faultGroup as DemonstrationNote["faultGroup"],
      symptoms: JSON.parse(row.symptoms),
      causes: JSON.parse(row.causes),
      drives: JSON.parse(row.applies).drives,
    }));
}

function signersOf(people: Map<string, Person>, notes: readonly DemonstrationNote[]): Signers {
  const byId = new Map([...people.values()].map((person) => [person.id, person]));
  const office = people.get("Orla Vance");
  if (!office) throw new Error("nobody in the office");
  return {
    office,
    engineer: (id) => byId.get(id) ?? office,
    noteId: (key) => notes.find((note) => note.starterKey === key)?.id ?? null,
  };
}

function storyFrame(
  now: number,
  random: SeededRandom,
  lifts: Map<string, DemonstrationLift>,
  notes: readonly DemonstrationNote[],
  people: Map<string, Person>,
) {
  const wanted = <Value>(value: Value | undefined, name: string): Value => {
    if (value === undefined) throw new Error(`the demonstration has no ${name}`);
    return value;
  };
  return {
    now,
    random,
    lift: (title: string) => wanted(lifts.get(title), title),
    note: (key: string) => notes.find((note) => note.starterKey === key),
    engineer: (name: string) => wanted(people.get(name), name).id,
  };
}
