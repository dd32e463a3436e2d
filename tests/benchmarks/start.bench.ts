import { spawn } from "node:child_process";
import fs from "node:fs";
import path from "node:path";
import { createInterface } from "node:readline";
import { setTimeout } from "node:timers/promises";
import { type LargeCompany, largeCompany } from "./support/large-company.ts";
import { printTable, quantile, type Row } from "./support/report.ts";

const starts = 5;
const startIsOver = 15_000;
const root = path.resolve(import.meta.dirname, "../..");

/** Cold start to the first search and to the first ranked one, as a whole process, and the resident memory of the Node side. */
export async function run(): Promise<void> {
  const rows: Row[] = [];
  for (const size of [10_000, 100_000]) rows.push(...(await measure(await largeCompany(size))));
  printTable("start; targets: first search <= 1500 ms, resident memory <= 250 MB at 100,000", rows);
}

async function measure(company: LargeCompany): Promise<Row[]> {
  const firstSearch: number[] = [];
  for (let start = 0; start < starts; start++) firstSearch.push(await untilAnswer(company, false));
  // The first of these builds the index and keeps it; the others read it.
  await untilAnswer(company, true);
  const ranked: number[] = [];
  for (let start = 0; start < starts; start++) ranked.push(await untilAnswer(company, true));
  const bare: number[] = [];
  for (let start = 0; start < starts; start++) bare.push(await bareNode());
  const { settled, peak } = await memoryOf(company);
  const callouts = String(company.callouts);
  return [
    {
      what: "process start to first search, ms",
      callouts,
      median: quantile(firstSearch, 0.5),
      worst: Math.max(...firstSearch),
      ratio: quantile(firstSearch, 0.5) / quantile(bare, 0.5),
    },
    { what: "bare Node process, ms", callouts, median: quantile(bare, 0.5), worst: Math.max(...bare) },
    {
      what: "start to first ranked search, ms",
      callouts,
      median: quantile(ranked, 0.5),
      worst: Math.max(...ranked),
    },
    { what: "resident memory of ask, searched, MB", callouts, median: settled, worst: peak },
  ];
}

function ask(company: LargeCompany): ReturnType<typeof spawn> {
  return spawn(process.execPath, [path.join(root, "out/main/ask.js"), "--data", company.folder, "--lines"], {
    stdio: ["pipe", "pipe", "inherit"],
  });
}

/** Milliseconds from the start of the process to its first answer, or to the first that the ranked index gives. */
async function untilAnswer(company: LargeCompany, isRanked: boolean): Promise<number> {
  const start = performance.now();
  const child = ask(company);
  const answer = answers(child);
  while ((await answer(company.queries[0] ?? "")).warming && isRanked);
  const taken = performance.now() - start;
  await ended(child);
  return taken;
}

async function bareNode(): Promise<number> {
  const start = performance.now();
  await ended(spawn(process.execPath, ["-e", ""], { stdio: ["pipe", "inherit", "inherit"] }));
  return performance.now() - start;
}

/**
 * A hundred searches of the ranked index, then a wait until the work of the start is over (the check of the whole file is
 * the longest), then VmRSS and the highest it ever was. Linux only.
 */
async function memoryOf(company: LargeCompany): Promise<{ readonly settled: number; readonly peak: number }> {
  const child = ask(company);
  const answer = answers(child);
  while ((await answer(company.queries[0] ?? "")).warming);
  for (const query of company.queries.slice(0, 100)) await answer(query);
  await setTimeout(startIsOver);
  const status = fs.readFileSync(`/proc/${child.pid}/status`, "utf8");
  const megabytes = (name: string): number =>
    Number(new RegExp(`${name}:\\s+(\\d+)`).exec(status)?.[1]) / 1024;
  await ended(child);
  return { settled: megabytes("VmRSS"), peak: megabytes("VmHWM") };
}

/** Asks one search after the other. */
function answers(child: ReturnType<typeof spawn>): (text: string) => Promise<{ readonly warming: boolean }> {
  const lines = createInterface({ input: child.stdout as NodeJS.ReadableStream })[Symbol.asyncIterator]();
  return async (text) => {
    child.stdin?.write(`${JSON.stringify({ operation: "search.find", input: { text } })}\n`);
    const { ok, value } = JSON.parse((await lines.next()).value as string);
    if (!ok) throw new Error("The search failed.");
    return value;
  };
}

function ended(child: ReturnType<typeof spawn>): Promise<void> {
  child.stdin?.end();
  return new Promise((resolve) => child.once("exit", () => resolve()));
}
