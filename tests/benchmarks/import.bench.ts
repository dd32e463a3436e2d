import { spawn } from "node:child_process";
import fs from "node:fs";
import os from "node:os";
import path from "node:path";
import { stringify } from "csv-stringify/sync";
import { SeededRandom } from "../../main/data/demonstration/seeded-random.ts";
import { printTable, type Row } from "./support/report.ts";

const rowCount = 100_000;
const root = path.resolve(import.meta.dirname, "../..");
const symptoms = [
  "doors keep reopening",
  "stops a hand's breadth low",
  "no light in the car",
  "grinding noise",
];
const causes = ["dirty door edge", "moved zone magnet", "lamp failed", "worn guide shoe"];

/** A table of 100,000 old callouts on 2,000 lifts brought in from the command line, beside a bare reading of the file. */
export async function run(): Promise<void> {
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), "sillbook-import-bench-"));
  try {
    const file = path.join(folder, "old.csv");
    fs.writeFileSync(file, stringify(oldRecords()));
    const data = path.join(folder, "data");
    const company = { companyName: "Bench", personName: "Bench", role: "office" };
    await ask(["--data", data, "company.start", "-"], JSON.stringify(company));
    const bare = performance.now();
    fs.readFileSync(file, "utf8").split("\n").length;
    const readOnly = performance.now() - bare;
    const begun = performance.now();
    const peak = await ask(
      ["--data", data, "--as", "Bench", "--table", file, "bring-in", "-"],
      JSON.stringify({ addLifts: true, dateForm: "day first" }),
    );
    const row: Row = {
      what: "bringing in",
      rows: String(rowCount),
      seconds: (performance.now() - begun) / 1000,
      "peak MB": peak,
    };
    const baseline: Row = {
      what: "reading the file alone",
      rows: String(rowCount),
      seconds: readOnly / 1000,
    };
    printTable("import; targets: 100,000 rows in 60 s and 400 MB", [row, baseline]);
  } finally {
    fs.rmSync(folder, { recursive: true, force: true });
  }
}

function oldRecords(): string[][] {
  const random = new SeededRandom(5);
  const two = (number: number): string => String(number).padStart(2, "0");
  const rows = [["Received", "Site", "Lift", "Symptom", "Cause", "Fix"]];
  for (let index = 0; index < rowCount; index++) {
    const day = `${two(random.integer(1, 28))}/${two(random.integer(1, 12))}/${random.integer(2014, 2025)}`;
    const which = random.integer(0, symptoms.length - 1);
    rows.push([
      `${day} ${two(random.integer(0, 23))}:${two(random.integer(0, 59))}`,
      `House ${random.integer(1, 500)}`,
      `Lift ${random.integer(1, 4)}`,
      `${symptoms[which]} since ${random.integer(1, 97)}`,
      causes[which] ?? "",
      `put right: ${causes[which]}`,
    ]);
  }
  return rows;
}

/** Runs `ask` and returns the most memory it held, MB (Linux: VmHWM, looked at while it runs). */
function ask(args: readonly string[], input: string): Promise<number> {
  const child = spawn(process.execPath, [path.join(root, "out/main/ask.js"), ...args], {
    stdio: ["pipe", "ignore", "pipe"],
  });
  let peak = 0;
  const look = (): void => {
    const status = fs.readFileSync(`/proc/${child.pid}/status`, { encoding: "utf8", flag: "r" });
    peak = Math.max(peak, Number(/VmHWM:\s+(\d+)/.exec(status)?.[1] ?? 0) / 1024);
  };
  child.stderr.on("data", () => look());
  child.stdin.end(input);
  return new Promise((resolve, reject) =>
    child.once("exit", (code) => (code === 0 ? resolve(peak) : reject(new Error(`ask ended with ${code}`)))),
  );
}
