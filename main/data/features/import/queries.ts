import type { ImportCounts, ImportRow } from "#shared-lib/contract/import.ts";
import { importMappingSchema } from "#shared-lib/contract/import.ts";
import { SillbookError } from "#shared-lib/errors.ts";
import type { Handlers } from "../../context.ts";
import { findRunSql, listRefusalsSql, listRunsSql, rememberedSql } from "./import.sql.ts";
import { LiftFinder, liftWordsOf } from "./lift-finder.ts";
import { settleRow } from "./settle-row.ts";

interface RunRow {
  readonly importId: string;
  readonly name: string;
  readonly at: string;
  readonly personName: string;
  readonly added: number;
  readonly made: number;
  readonly waiting: number;
  readonly takenBack: number;
  readonly refused: number;
}

export const importQueries: Handlers<
  "import.matchLifts" | "import.preview" | "import.list" | "import.refused" | "import.remembered"
> = {
  "import.matchLifts"(context, { lifts }) {
    const finder = new LiftFinder(context.store);
    return {
      lifts: lifts.map((words) => {
        const liftId = finder.find(words);
        return { words: liftWordsOf(words), liftId, couldBe: liftId ? [] : [...finder.couldBe(words)] };
      }),
    };
  },

  "import.preview"(context, { rows, ...settling }) {
    const finder = new LiftFinder(context.store);
    const seen = new Set<string>();
    const sites = new Set<string>();
    const lifts = new Set<string>();
    const refused: ImportCounts["refused"] = [];
    let duplicates = 0;
    for (const row of rows) {
      const settled = settleRow(context.store, finder, row, settling, context.now);
      if (settled.what === "refused") refused.push({ rowNumber: row.rowNumber, reason: settled.reason });
      else if (settled.what === "duplicate" || seen.has(keyOf(row))) duplicates += 1;
      else if (!settled.liftId) {
        lifts.add(liftWordsOf(row).toLowerCase());
        if (!finder.findSite(row.site)) sites.add(row.site.toLowerCase());
      }
      seen.add(keyOf(row));
    }
    const added = rows.length - duplicates - refused.length;
    return { added, duplicates, refused, newSites: sites.size, newLifts: lifts.size };
  },

  "import.list"(context) {
    const rows = context.store.all<RunRow>(listRunsSql);
    return {
      imports: rows.map(({ made, waiting, takenBack, ...run }) => ({
        ...run,
        undone: made > 0 && waiting === 0 && takenBack > 0,
      })),
    };
  },

  "import.refused"(context, { importId, after, limit }) {
    const run = context.store.get<{ header: string }>(findRunSql, { id: importId });
    if (!run) throw new SillbookError("not-found", undefined, { importId });
    const rows = context.store.all<{ rowNumber: number; reason: string; cells: string }>(listRefusalsSql, {
      importId,
      after,
      limit,
    });
    return {
      header: JSON.parse(run.header) as string[],
      rows: rows.map((row) => ({ ...row, cells: JSON.parse(row.cells) as string[] })),
    };
  },

  "import.remembered"(context, { header }) {
    const kept = context.store.get<{ mapping: string }>(rememberedSql, { header: JSON.stringify(header) });
    return { mapping: kept ? importMappingSchema.parse(JSON.parse(kept.mapping)) : null };
  },
};

function keyOf(row: ImportRow): string {
  return JSON.stringify([
    liftWordsOf(row).toLowerCase(),
    row.receivedAt?.slice(0, 16),
    row.said.toLowerCase(),
  ]);
}
