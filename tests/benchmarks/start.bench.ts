import { spawn } from "node:child_process";
import fs from "node:fs";
import path from "node:path";
import { createInterface } from "node:readline";
import { type LargeCompany, largeCompany } from "./support/large-company.ts";
import { printTable, quantile, type Row } from "./support/report.ts";

const starts = 5;
const root = path.resolve(import.meta.dirname, "../..");

/** Cold start to the first search, as a whole process, and the resident memory of the Node side when it is warm. */
export async function run(): Promise<void> {
  const rows: Row[] = [];
  for (const size of [10_000, 100_000]) rows.push(...(await measure(await largeCompany(size))));
  printTable("start; targets: first search <= 1500 ms, resident memory <= 250 MB at 100,000", rows);
}

async function measure(company: LargeCompany): Promise<Row[]> {
  const firstSearch: number[] = [];
  for (let start = 0; start < starts; start++) firstSearch.push(await untilFirstSearch(company));
  const bare: number[] = [];
  for (let start = 0; start < starts; start++) bare.push(await bareNode());
  const memory = await warmMemory(company);
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
    { what: "resident memory of ask, warm, MB", callouts, median: memory },
  ];
}

function ask(company: LargeCompany): ReturnType<typeof spawn> {
  return spawn(process.execPath, [path.join(root, "out/main/ask.js"), "--data", company.folder, "--lines"], {
    stdio: ["pipe", "pipe", "inherit"],
  });
}

async function untilFirstSearch(company: LargeCompany): Promise<number> {
  const start = performance.now();
  const child = ask(company);
  const lines = createInterface({ input: child.stdout as NodeJS.ReadableStream })[Symbol.asyncIterator]();
  send(child, company.queries[0] ?? "");
  const { value } = await lines.next();
  const taken = performance.now() - start;
  if (!JSON.parse(value as string).ok) throw new Error(String(value));
  await ended(child);
  return taken;
}

async function bareNode(): Promise<number> {
  const start = performance.now();
  await ended(spawn(process.execPath, ["-e", ""], { stdio: ["pipe", "inherit", "inherit"] }));
  return performance.now() - start;
}

/** Searches until the ranked index answers, then a hundred more, then reads VmRSS. Linux only. */
async function warmMemory(company: LargeCompany): Promise<number> {
  const child = ask(company);
  const lines = createInterface({ input: child.stdout as NodeJS.ReadableStream })[Symbol.asyncIterator]();
  const search = async (text: string): Promise<boolean> => {
    send(child, text);
    return JSON.parse((await lines.next()).value as string).value.warming;
  };
  while (await search(company.queries[0] ?? ""));
  for (const query of company.queries.slice(0, 100)) await search(query);
  const status = fs.readFileSync(`/proc/${child.pid}/status`, "utf8");
  const kilobytes = Number(/VmRSS:\s+(\d+)/.exec(status)?.[1]);
  await ended(child);
  return kilobytes / 1024;
}

function send(child: ReturnType<typeof spawn>, text: string): void {
  child.stdin?.write(`${JSON.stringify({ operation: "search.find", input: { text } })}\n`);
}

function ended(child: ReturnType<typeof spawn>): Promise<void> {
  child.stdin?.end();
  return new Promise((resolve) => child.once("exit", () => resolve()));
}
