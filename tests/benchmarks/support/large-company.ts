import fs from "node:fs";
import os from "node:os";
import path from "node:path";
import type { BatchAsk, DataCore } from "../../../main/data/data-core.ts";
import { DataSession } from "../../../main/data/data-session.ts";
import { SeededRandom } from "../../../main/data/demonstration/seeded-random.ts";

export interface LargeCompany {
  readonly folder: string;
  readonly callouts: number;
  /** Sentences as callers say them, drawn from the same words as the records. */
  readonly queries: readonly string[];
}

interface NoteFile {
  readonly title: string;
  readonly group: string;
  readonly symptoms: readonly string[];
  readonly causes: readonly { readonly key: string; readonly title: string; readonly fix: string }[];
}

const seed = 7;
const lifts = 2000;
const liftsOfSite = 4;
const notes = 2000;
const atOnce = 2000;
const version = 2;
const families = ["Tern", "Dunlin", "Petrel", "Sanderling", "Plover"];
const places = [
  "at the lobby",
  "on the third floor",
  "at landing 5",
  "between 2 and 3",
  "in the basement",
  "since the storm",
  "after the repair",
  "in the mornings",
  "when it is full",
  "both ways",
];

const starterNotes: readonly NoteFile[] = Object.values(
  import.meta.glob<NoteFile>("../../../main/data/starter-notes/*.json", { eager: true, import: "default" }),
);

const quiet = { demonstration: false, programVersion: "bench", emit: () => undefined };

/**
 * A company of 2,000 lifts and 2,000 fault notes with the wanted number of callouts, the same at every run. Made once
 * and kept in the folder for temporary files, because making the largest takes minutes.
 */
export async function largeCompany(callouts: number): Promise<LargeCompany> {
  const folder = path.join(os.tmpdir(), `sillbook-bench-v${version}-${callouts}`);
  const done = path.join(folder, "complete");
  if (!fs.existsSync(done)) {
    fs.rmSync(folder, { recursive: true, force: true });
    const started = Date.now();
    const session = await DataSession.open({ ...quiet, folder });
    fill(session.core, callouts);
    session.close();
    fs.writeFileSync(done, "");
    console.log(`  made ${callouts} callouts in ${((Date.now() - started) / 1000).toFixed(0)} s`);
  }
  return { folder, callouts, queries: queries(200) };
}

export function openLargeCompany(company: LargeCompany): Promise<DataSession> {
  return DataSession.open({ ...quiet, folder: company.folder });
}

function fill(core: DataCore, callouts: number): void {
  const random = new SeededRandom(seed);
  const person = core.batch((ask) => {
    const { personId } = ask(
      "company.start",
      { companyName: "Bench", personName: "Bench", role: "office" },
      null,
    );
    return { id: personId, name: "Bench" };
  });
  const liftIds = core.batch((ask) => makeLifts(ask, person, random));
  for (let made = 0; made < notes; made += atOnce / 4) {
    core.batch((ask) => {
      for (let index = 0; index < atOnce / 4; index++) makeNote(ask, person, random, made + index);
    });
  }
  const begin = Date.parse("2016-01-01T00:00:00.000Z");
  const step = (10 * 365 * 86_400_000) / callouts;
  for (let made = 0; made < callouts; made += atOnce) {
    core.batch((ask) => {
      for (let index = made; index < Math.min(callouts, made + atOnce); index++) {
        const note = random.pick(starterNotes);
        const cause = random.pick(note.causes);
        const at = Math.floor(begin + index * step);
        ask(
          "callout.bringIn",
          {
            liftId: random.pick(liftIds),
            said: `${random.pick(note.symptoms)} ${random.pick(places)}`,
            group: note.group as never,
            receivedAt: new Date(at).toISOString(),
            backInServiceAt: new Date(at + random.integer(30, 600) * 60_000).toISOString(),
            cause: random.chance(0.8) ? cause.title : "",
            fix: cause.fix.slice(0, 160),
          },
          person,
        );
      }
    });
  }
}

function makeLifts(ask: BatchAsk, person: { id: string; name: string }, random: SeededRandom): string[] {
  const ids: string[] = [];
  for (let site = 0; site < lifts / liftsOfSite; site++) {
    const siteId = ask(
      "site.add",
      {
        name: `House ${site + 1}`,
        street: `${random.integer(1, 200)} Street ${site % 90}`,
        town: "Wendle Bay",
      },
      person,
    ).id;
    for (let number = 1; number <= liftsOfSite; number++) {
      ids.push(
        ask(
          "lift.add",
          {
            siteId,
            name: `Lift ${number}`,
            driveKind: "geared traction",
            controllerFamily: random.pick(families),
          },
          person,
        ).id,
      );
    }
  }
  return ids;
}

function makeNote(
  ask: BatchAsk,
  person: { id: string; name: string },
  random: SeededRandom,
  number: number,
): void {
  const base = random.pick(starterNotes);
  ask(
    "faultNote.write",
    {
      title: `${base.title}, case ${number}`,
      group: base.group as never,
      symptoms: base.symptoms.map((symptom) => `${symptom} ${random.pick(places)}`),
      causes: base.causes.map(({ key, title, fix }) => ({ key, title, fix })),
    },
    person,
  );
}

function queries(count: number): string[] {
  const random = new SeededRandom(seed + 1);
  return Array.from({ length: count }, () => {
    const words = random.pick(random.pick(starterNotes).symptoms).split(" ");
    const from = random.integer(0, Math.max(0, words.length - 4));
    const kept = words.slice(from, from + random.integer(2, 5)).join(" ");
    return random.chance(0.25) ? withTypingError(kept, random) : kept;
  });
}

function withTypingError(text: string, random: SeededRandom): string {
  const at = random.integer(1, Math.max(1, text.length - 2));
  return text.slice(0, at) + text.slice(at + 1);
}
