import fs from "node:fs";
import path from "node:path";
import fc from "fast-check";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { analyseQuery } from "#shared-lib/search/analyse-query.ts";
import type { SearchIndex } from "#shared-lib/search/search-index.ts";
import { writeIndexFile } from "../../../main/data/features/search/index-file.ts";
import { SearchIndexer } from "../../../main/data/features/search/indexer.ts";
import { addLift, openTestCore, type TestCore } from "./support/test-core.ts";

let bench: TestCore;
let file: string;
let lifts: { siteId: string; liftId: string }[];

beforeAll(async () => {
  bench = await openTestCore();
  file = path.join(bench.folder, "search-index.bin");
  bench.core.search.buildAll();
  lifts = [addLift(bench), addLift(bench, "Lift 1", "Saltpan Court")];
});
afterAll(() => bench.close());

const words =
  "doors reopen stops low landing 3 noise rope brake 20 mm terrace X4:12 élan двери B1-000123".split(" ");
const saying = fc
  .array(fc.constantFrom(...words), { minLength: 1, maxLength: 6 })
  .map((said) => said.join(" "));
const queries = [
  "doors reopen",
  "stops low",
  "3rd landing",
  "20mm",
  "kittiwake",
  "curlew",
  "x4 12",
  "двери",
  "elan",
];

type Edit = (pick: number, said: string) => void;

const newestCallout = (pick: number) => {
  const { callouts } = bench.ask("callout.list", {});
  return callouts[pick % Math.max(1, callouts.length)];
};

const edits: Readonly<Record<string, Edit>> = {
  log(pick, said) {
    const lift = lifts[pick % lifts.length];
    bench.ask("callout.log", { liftId: lift?.liftId ?? null, liftWords: "", said, inside: "nobody" });
  },
  change(pick, said) {
    const callout = newestCallout(pick);
    if (!callout) return;
    const { version } = bench.ask("callout.find", { id: callout.id }).callout;
    bench.ask("callout.change", { id: callout.id, version, fields: { said } });
  },
  join(pick, said) {
    const callout = newestCallout(pick);
    if (callout) bench.ask("callout.join", { id: callout.id, said });
  },
  renameSite(pick, said) {
    const { site } = bench.ask("lift.find", { id: lifts[pick % lifts.length]?.liftId ?? "" });
    bench.ask("site.change", { id: site.id, version: site.version, fields: { name: `Curlew ${said}` } });
  },
  keep() {
    writeIndexFile(file, bench.core.search.index, bench.core.file, bench.core.search.calculatorDocuments);
  },
};

/** What an index answers to every query, with scores. */
function answersOf(index: SearchIndex): unknown {
  return queries.map((text) => index.search(analyseQuery(text, index.words), { limitPerKind: 10 }));
}

async function readAgain(): Promise<SearchIndexer> {
  const indexer = new SearchIndexer(bench.core.file);
  await indexer.read(file);
  indexer.buildAll();
  return indexer;
}

describe("the ranked index that is kept on the disk", () => {
  test("after any edits, kept or not, read again or built anew, it answers as the one in memory", async () => {
    const step = fc.record({
      edit: fc.constantFrom(...Object.keys(edits)),
      pick: fc.nat(20),
      said: saying,
    });
    await fc.assert(
      fc.asyncProperty(fc.array(step, { minLength: 1, maxLength: 12 }), async (steps) => {
        for (const { edit, pick, said } of steps) {
          edits[edit]?.(pick, said);
          bench.minutes(7);
        }
        const live = answersOf(bench.core.search.index);
        const anew = new SearchIndexer(bench.core.file);
        anew.buildAll();
        expect(answersOf(anew.index)).toEqual(live);
        expect(answersOf((await readAgain()).index)).toEqual(live);
      }),
      { numRuns: 40 },
    );
  });

  test("is written only when enough has changed to be worth it", async () => {
    fs.rmSync(file, { force: true });
    bench.core.search.keep(file);
    expect(fs.existsSync(file)).toBe(false);
  });

  test.each([
    ["half a file", () => fs.truncateSync(file, Math.floor(fs.statSync(file).size / 2))],
    ["an empty file", () => fs.truncateSync(file, 0)],
    ["one wrong byte", () => flip(fs.statSync(file).size - 100)],
    ["no file", () => fs.rmSync(file)],
    [
      "a folder of its name",
      () => {
        fs.rmSync(file);
        fs.mkdirSync(file);
      },
    ],
    ["noise", () => fs.writeFileSync(file, Buffer.alloc(5000, 0xa5))],
  ])("%s: it is built from the records", async (_what, harm) => {
    fs.rmSync(file, { recursive: true, force: true });
    edits.keep?.(0, "");
    harm();
    expect(answersOf((await readAgain()).index)).toEqual(answersOf(bench.core.search.index));
    fs.rmSync(file, { recursive: true, force: true });
  });

  test("of another database, or of this one before a backup was put in place, it is left alone", async () => {
    edits.keep?.(0, "");
    const other = await openTestCore();
    try {
      addLift(other, "Lift 9", "Saltpan Court");
      const indexer = new SearchIndexer(other.core.file);
      await indexer.read(file);
      indexer.buildAll();
      other.core.search.buildAll();
      expect(answersOf(indexer.index)).toEqual(answersOf(other.core.search.index));
    } finally {
      other.close();
    }
  });
});

function flip(at: number): void {
  const bytes = fs.readFileSync(file);
  bytes[at] = (bytes[at] ?? 0) ^ 0xff;
  fs.writeFileSync(file, bytes);
}
