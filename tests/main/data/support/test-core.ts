import fs from "node:fs";
import os from "node:os";
import path from "node:path";
import type { ProgramEvent } from "#shared-lib/contract/operation.ts";
import type { InputOf, OperationName, OutputOf } from "#shared-lib/contract/operations.ts";
import { SillbookError } from "#shared-lib/errors.ts";
import { DataCore } from "../../../../main/data/data-core.ts";
import { applyMigrations, pendingMigrations } from "../../../../main/data/migrate.ts";
import { openSqliteOnDisk } from "../../../../main/data/sqlite-disk/open-sqlite-on-disk.ts";

/** A real database in a folder of its own, a company with three people, and a clock that the test moves. */
export interface TestCore {
  readonly core: DataCore;
  readonly folder: string;
  readonly events: ProgramEvent[];
  readonly people: { readonly office: string; readonly engineer: string; readonly lead: string };
  now: number;
  /** Runs an operation, as the engineer where it writes; throws the SillbookError of a failed envelope. */
  ask<Name extends OperationName>(name: Name, input: InputOf<Name>, as?: string): OutputOf<Name>;
  /** The error code with which an operation is refused. */
  refusal<Name extends OperationName>(name: Name, input: InputOf<Name>, as?: string): string;
  minutes(count: number): string;
  close(): void;
}

export async function openTestCore(): Promise<TestCore> {
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), "sillbook-test-"));
  const file = await openSqliteOnDisk(path.join(folder, "sillbook.sqlite"));
  applyMigrations(file, pendingMigrations(file), () => new Date().toISOString());
  const events: ProgramEvent[] = [];
  const people = { office: "", engineer: "", lead: "" };
  const test: TestCore = {
    now: Date.parse("2026-11-17T08:52:00.000Z"),
    folder,
    events,
    people,
    core: new DataCore(file, {
      folder,
      programVersion: "test",
      wallClock: () => test.now,
      emit: (event) => events.push(event),
      logUnexpected: (error) => {
        throw error;
      },
      checkAnswers: true,
      shortCode: "A",
    }),
    ask(name, input, as = people.engineer) {
      const envelope = test.core.request({ operation: name, input, as });
      if (!envelope.ok)
        throw new SillbookError(envelope.error.code, envelope.error.message, envelope.error.details);
      return envelope.value as OutputOf<typeof name>;
    },
    refusal(name, input, as = people.engineer) {
      const envelope = test.core.request({ operation: name, input, as });
      return envelope.ok ? "accepted" : envelope.error.code;
    },
    minutes(count) {
      test.now += count * 60_000;
      return new Date(test.now).toISOString();
    },
    close() {
      file.close();
      fs.rmSync(folder, { recursive: true, force: true });
    },
  };
  const started = test.ask("company.start", {
    companyName: "Marram Lift Care",
    personName: "Orla Vance",
    role: "office",
  });
  people.office = started.personId;
  people.engineer = test.ask("person.add", { name: "Ines Calder", role: "engineer" }, people.office).id;
  people.lead = test.ask("person.add", { name: "Hedda Quill", role: "team lead" }, people.office).id;
  return test;
}

/** A site with one lift of four landings. */
export function addLift(
  test: TestCore,
  name = "Lift 2",
  siteName = "Kittiwake House",
): { siteId: string; liftId: string } {
  const site = test.ask("site.add", { name: siteName, street: "1 Quay Road" });
  const lift = test.ask("lift.add", {
    siteId: site.id,
    name,
    driveKind: "machine-room-less",
    ratedSpeed: 1,
    ratedLoad: 630,
    controllerFamily: "Dunlin",
    landings: [0, 3.2, 6, 8.8].map((level, index) => ({ marking: String(index), name: "", level })),
  });
  return { siteId: site.id, liftId: lift.id };
}
