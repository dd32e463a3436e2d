/** "SILL": marks a file as a Sillbook database, so that another program's database is never taken for one. */
export const sillbookApplicationId = 0x53494c4c;

/** Must be the first statement: it decides how the file is opened for the first time. */
export const holdFileAlone = "PRAGMA locking_mode = EXCLUSIVE";

// Measured with simulated power cuts: of the journal modes only TRUNCATE and PERSIST lose nothing that was acknowledged, and
// PERSIST flushes faster, because the journal neither grows nor shrinks.
export const keepJournalOnDisk = "PRAGMA journal_mode = PERSIST";
/** A larger journal (of an import, say) is cut back to this after its commit, in bytes. */
export const limitJournal = "PRAGMA journal_size_limit = 1048576";
export const flushEverything = "PRAGMA synchronous = EXTRA";
export const readSynchronous = "PRAGMA synchronous";
export const synchronousExtra = 3;

/** 32 MB of pages are kept in memory; intermediate results never touch the disk. */
export const settings = `
  PRAGMA cache_size = -32768;
  PRAGMA temp_store = MEMORY;
  PRAGMA foreign_keys = ON;
  PRAGMA trusted_schema = ON;
`;

export const readApplicationId = "PRAGMA application_id";
export const writeApplicationId = `PRAGMA application_id = ${sillbookApplicationId}`;
export const readSchemaSize = "SELECT count(*) AS entries FROM sqlite_schema";
/** A check reads every page once: keeping them would only take memory. */
export const smallCache = "PRAGMA cache_size = -2048";
export const quickCheck = "PRAGMA quick_check(20)";

export const begin = "BEGIN IMMEDIATE";
export const commit = "COMMIT";
export const rollback = "ROLLBACK";
