import { spawn } from "node:child_process";
import { once } from "node:events";
import fs from "node:fs";
import path from "node:path";
import { build } from "vite";
import { afterAll, beforeAll, expect, test } from "vitest";
import { openSqliteOnDisk } from "../../main/data/sqlite-disk/open-sqlite-on-disk.ts";
import { seededRandom } from "../main/data/sqlite-disk/seeded-random.ts";
import { temporaryFolder } from "../main/data/sqlite-disk/temporary-folder.ts";
import { requireContent } from "./content.ts";

const rounds = Number(process.env.SILLBOOK_KILL_ROUNDS ?? 15);
const here = import.meta.dirname;
// Inside the project, as the bundle looks for sql.js from where it lies.
let bundleFolder: string;

beforeAll(async () => {
  fs.mkdirSync(path.join(here, "../results"), { recursive: true });
  bundleFolder = fs.mkdtempSync(path.join(here, "../results/durability-"));
  await build({
    configFile: false,
    logLevel: "error",
    build: {
      ssr: path.join(here, "writer-module.ts"),
      outDir: bundleFolder,
      rollupOptions: { output: { entryFileNames: "writer-module.mjs" } },
    },
  });
});

afterAll(() => fs.rmSync(bundleFolder, { recursive: true, force: true }));

/** Lets a process save until it has told `commits` of them, kills it `delay` milliseconds later; the last number it told. */
async function saveUntilKilled(file: string, commits: number, delay: number): Promise<number> {
  const writer = spawn(
    process.execPath,
    [path.join(here, "writer.mjs"), path.join(bundleFolder, "writer-module.mjs"), file],
    { stdio: ["ignore", "pipe", "pipe"] },
  );
  let told = "";
  let complaints = "";
  writer.stderr.on("data", (data) => {
    complaints += String(data);
  });
  writer.stdout.on("data", (data) => {
    told += String(data);
    if (told.split("\n").length - 1 < commits || writer.killed) return;
    // The next commits are under way; waiting without giving up the thread hits them at a moment of its own.
    const end = performance.now() + delay;
    while (performance.now() < end);
    writer.kill("SIGKILL");
  });
  const [, signal] = await once(writer, "close");
  if (signal !== "SIGKILL") throw new Error(`the writer ended by itself: ${complaints}`);
  const numbers = told
    .split("\n")
    .slice(0, -1)
    .filter((line) => line !== "ready");
  return Number(numbers.at(-1) ?? 0);
}

test(`a process killed ${rounds} times while it saves loses no acknowledged commit`, async () => {
  const file = path.join(temporaryFolder(), "sillbook.sqlite");
  const random = seededRandom(20261124);
  let interrupted = 0;
  let number = 0;
  for (let round = 0; round < rounds; round += 1) {
    const acknowledged = Math.max(
      number,
      await saveUntilKilled(file, 1 + Math.floor(random() * 30), random() * 4),
    );
    if (fs.existsSync(`${file}-journal`) && fs.statSync(`${file}-journal`).size > 0) interrupted += 1;
    const store = await openSqliteOnDisk(file, { whenMissing: "refuse" });
    try {
      number = requireContent(store);
      expect(number).toBeGreaterThanOrEqual(acknowledged);
      expect(number).toBeLessThanOrEqual(acknowledged + 1);
    } finally {
      store.close();
    }
  }
  // Otherwise no kill came in the middle of a commit and the test would have shown nothing.
  expect(interrupted).toBeGreaterThan(0);
  expect(number).toBeGreaterThan(rounds);
});
