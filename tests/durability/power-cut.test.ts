import fs from "node:fs";
import path from "node:path";
import { expect, test } from "vitest";
import { openSqliteOnDisk } from "../../main/data/sqlite-disk/open-sqlite-on-disk.ts";
import type { SystemCallRecord } from "../../main/data/sqlite-disk/system-call-trace.ts";
import { seededRandom } from "../main/data/sqlite-disk/seeded-random.ts";
import { temporaryFolder } from "../main/data/sqlite-disk/temporary-folder.ts";
import { prepareContent, requireContent, saveNext } from "./content.ts";
import { contentAfterPowerCut, type DiskContent } from "./power-cut.ts";

const cuts = Number(process.env.SILLBOOK_POWER_CUTS ?? 80);
const controlCuts = 20;
const commits = 60;
const seed = 20261124;

interface Recording {
  readonly folder: string;
  readonly before: DiskContent;
  readonly trace: readonly SystemCallRecord[];
}

async function recordCommits(): Promise<Recording> {
  const folder = fs.realpathSync(temporaryFolder());
  const file = path.join(folder, "sillbook.sqlite");
  (await openSqliteOnDisk(file)).close();
  const before = new Map(
    fs.readdirSync(folder).map((name) => [path.join(folder, name), fs.readFileSync(path.join(folder, name))]),
  );
  const trace: SystemCallRecord[] = [];
  const store = await openSqliteOnDisk(file, { trace });
  prepareContent(store);
  // Larger than the page cache, so that the journal is flushed and the database written in the middle of a transaction.
  for (let commit = 1; commit <= commits; commit += 1) {
    store.exec(`PRAGMA cache_size = ${commit % 5 === 0 ? 5 : 500}`);
    trace.push({ call: "mark", mark: saveNext(store) });
  }
  store.close();
  return { folder, before, trace };
}

/** "kept", "lost" (an acknowledged commit is missing) or what is wrong with the database. */
async function judge(content: DiskContent, acknowledged: number): Promise<string> {
  const folder = temporaryFolder();
  for (const [file, bytes] of content) fs.writeFileSync(path.join(folder, path.basename(file)), bytes);
  try {
    const store = await openSqliteOnDisk(path.join(folder, "sillbook.sqlite"), { whenMissing: "refuse" });
    try {
      const number = requireContent(store);
      if (number < acknowledged) return "lost";
      return number > acknowledged + 1 ? `from the future: ${number} after ${acknowledged}` : "kept";
    } finally {
      store.close();
    }
  } catch (error) {
    return String(error);
  }
}

async function cutRepeatedly(
  recording: Recording,
  count: number,
  ignoresFlushing: boolean,
): Promise<string[]> {
  const { folder, before, trace } = recording;
  const random = seededRandom(seed);
  const verdicts: string[] = [];
  for (let cut = 0; cut < count; cut += 1) {
    const cutAt = 1 + Math.floor(random() * trace.length);
    const acknowledged = trace
      .slice(0, cutAt)
      .reduce((last, record) => (record.call === "mark" ? record.mark : last), 0);
    const content = contentAfterPowerCut({ folder, before, trace, cutAt, random, ignoresFlushing });
    verdicts.push(await judge(content, acknowledged));
  }
  return verdicts;
}

test(`${cuts} power cuts lose no acknowledged commit and leave the database and its full text sound`, async () => {
  const verdicts = await cutRepeatedly(await recordCommits(), cuts, false);
  expect(verdicts.filter((verdict) => verdict !== "kept")).toEqual([]);
  expect(verdicts).toHaveLength(cuts);
});

test("control: on a disk that only pretends to flush, power cuts do lose data", async () => {
  const verdicts = await cutRepeatedly(await recordCommits(), controlCuts, true);
  expect(verdicts.filter((verdict) => verdict !== "kept").length).toBeGreaterThan(controlCuts / 2);
});
