import fs from "node:fs";
import path from "node:path";
import { largeCompany, openLargeCompany } from "./support/large-company.ts";
import { printTable, quantile, timed } from "./support/report.ts";

const rounds = 300;
// A program that has just started compiles its own code during its first saves; they are printed apart.
const firstRounds = 50;

/**
 * Saving a callout through the contract, in turns with a bare append of the same size that flushes four times, as
 * SQLite's rollback journal does: what the disk itself takes.
 */
export async function run(): Promise<void> {
  const rows = [];
  for (const size of [10_000, 100_000]) {
    const company = await largeCompany(size);
    const session = await openLargeCompany(company);
    session.core.search.buildAll();
    const { lifts } = (await answer(session.request({ operation: "lift.list", input: {} }))) as {
      lifts: { id: string }[];
    };
    const bareFile = path.join(company.folder, "bare-append");
    const bare: number[] = [];
    const saves: number[] = [];
    const first: number[] = [];
    for (let round = -firstRounds; round < rounds; round++) {
      bare.push(await timed(() => append(bareFile)));
      const said = `${company.queries[(round + firstRounds) % company.queries.length]} number ${round}`;
      const input = {
        liftId: lifts[(round + firstRounds) % lifts.length]?.id ?? null,
        liftWords: "",
        said,
        inside: "nobody",
      };
      (round < 0 ? first : saves).push(
        await timed(() => answer(session.request({ operation: "callout.log", input, as: "Bench" }))),
      );
    }
    fs.rmSync(bareFile);
    session.close();
    const ratio = (share: number): number => quantile(saves, share) / quantile(bare, share);
    rows.push(
      {
        what: "callout.log",
        callouts: String(size),
        p50: quantile(saves, 0.5),
        p95: quantile(saves, 0.95),
        "ratio p50": ratio(0.5),
        "ratio p95": ratio(0.95),
      },
      {
        what: `its first ${firstRounds}`,
        callouts: String(size),
        p50: quantile(first, 0.5),
        p95: quantile(first, 0.95),
        "ratio p50": quantile(first, 0.5) / quantile(bare, 0.5),
        "ratio p95": quantile(first, 0.95) / quantile(bare, 0.95),
      },
      {
        what: "bare append, 4 fsync",
        callouts: String(size),
        p50: quantile(bare, 0.5),
        p95: quantile(bare, 0.95),
      },
    );
  }
  printTable("save of a callout, milliseconds; target p95 <= 3 times the bare append", rows);
}

async function answer(
  envelope: Promise<{ ok: boolean; value?: unknown; error?: { message: string } }>,
): Promise<unknown> {
  const { ok, value, error } = await envelope;
  if (!ok) throw new Error(error?.message);
  return value;
}

function append(file: string): void {
  const handle = fs.openSync(file, "a");
  const block = Buffer.alloc(1024, 65);
  for (let flush = 0; flush < 4; flush++) {
    fs.writeSync(handle, block);
    fs.fsyncSync(handle);
  }
  fs.closeSync(handle);
}
