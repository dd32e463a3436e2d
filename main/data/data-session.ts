import fs from "node:fs";
import { setImmediate as nextTurn } from "node:timers/promises";
import {
  anyEntity,
  type Envelope,
  type OperationRequest,
  type ProgramEvent,
} from "#shared-lib/contract/operation.ts";
import { type OperationName, operations } from "#shared-lib/contract/operations.ts";
import { SillbookError } from "#shared-lib/errors.ts";
import { listBackups, makeBackup } from "./backups.ts";
import { DataCore, failure, findOperation, parseInput } from "./data-core.ts";
import { type DataFolder, databaseHasVanished, openDataFolder } from "./data-folder.ts";
import { countChangesSql, quickCheckSql } from "./database.sql.ts";
import { fillDemonstration } from "./demonstration/fill-demonstration.ts";
import { checkFile, type FileChecker } from "./file-check/check-file.ts";
import { type LogFile, openLogFile } from "./log-file.ts";
import { type MaintenanceName, maintenanceHandlers } from "./maintenance.ts";
import { applyMigrations, pendingMigrations } from "./migrate.ts";
import { openSqliteOnDisk } from "./sqlite-disk/open-sqlite-on-disk.ts";
import { proveDisk } from "./sqlite-disk/self-test.ts";
import type { SqliteFile } from "./sqlite-disk/sqlite-file.ts";
import { installStarterNotes } from "./starter-notes/install-starter-notes.ts";

export interface SessionOptions {
  readonly folder: string;
  readonly demonstration: boolean;
  readonly programVersion: string;
  readonly emit: (event: ProgramEvent) => void;
  readonly wallClock?: () => number;
  readonly checkAnswers?: boolean;
  /** Looks through whole files; in this thread when left out. */
  readonly check?: FileChecker;
  /** A database of more bytes than this is read from while it is still being checked. */
  readonly checkedFirstUpTo?: number;
}

interface Opened {
  readonly core: DataCore;
  /** The whole file was looked through, or has just been made. */
  readonly isChecked: boolean;
  readonly isNew: boolean;
}

const hour = 60 * 60 * 1000;
/** Checked within a quarter of a second: nobody waits for it. */
const smallDatabase = 24 * 1024 * 1024;
/** Answered also while the database cannot be opened, so that a backup can be put in its place. */
const rescueOperations: ReadonlySet<string> = new Set(["backup.list", "backup.restore"]);

/**
 * One data folder while the program runs on it: lock, self-test, opening with checks, backups before what could hurt,
 * and the requests, one after another. A damaged database is never written to: the session then answers only what helps
 * to put a backup in its place, and says so to everything else. A large database is read from while it is still being
 * checked; what writes waits until it was found good and today's backup is made.
 */
export class DataSession {
  readonly folder: DataFolder;
  readonly options: SessionOptions;
  readonly #log: LogFile;
  #core: DataCore | null = null;
  #trouble: SillbookError | null = null;
  #last: Promise<unknown> = Promise.resolve();
  #dailyTimer: NodeJS.Timeout | undefined;
  #mayWrite: Promise<void> = Promise.resolve();
  readonly #closing = new AbortController();

  private constructor(folder: DataFolder, options: SessionOptions) {
    this.folder = folder;
    this.options = options;
    this.#log = openLogFile(folder.log);
  }

  /** @throws SillbookError folder-in-use, folder-not-empty, disk-full, disk-denied, disk-failed */
  static async open(options: SessionOptions): Promise<DataSession> {
    const folder = openDataFolder(options.folder);
    try {
      const session = new DataSession(folder, options);
      await proveDisk(folder.folder);
      await session.openCore({ demonstration: options.demonstration });
      session.#dailyTimer = setInterval(() => void session.#backUpDaily(), hour);
      session.#dailyTimer.unref();
      return session;
    } catch (error) {
      folder.close();
      throw error;
    }
  }

  get core(): DataCore {
    if (this.#core) return this.#core;
    throw this.#trouble ?? new SillbookError("store-damaged");
  }

  /** How copies of the database are checked. */
  get checking(): { readonly check: FileChecker; readonly signal: AbortSignal } {
    return { check: this.options.check ?? checkFile, signal: this.#closing.signal };
  }

  /** Answers with an envelope; never throws. What writes is done in the order in which it came. */
  async request(request: OperationRequest): Promise<Envelope> {
    if (!isRead(request)) await this.#mayWrite;
    return this.#enqueue(async () => {
      try {
        const operation = findOperation(request.operation);
        if (operation.kind === "maintenance" || (!this.#core && rescueOperations.has(request.operation))) {
          return { ok: true, value: await this.#maintain(request) };
        }
        return this.core.request(request);
      } catch (error) {
        return failure(error, (thrown) => this.#logUnexpected(thrown, request.operation));
      }
    });
  }

  /** Everything is closed when it returns; the promise resolves when no half copy is left behind either. */
  close(): Promise<void> {
    clearInterval(this.#dailyTimer);
    this.#closing.abort();
    this.closeCore();
    this.folder.close();
    return this.#mayWrite;
  }

  closeCore(): void {
    if (this.#core) this.#keepIndex(this.#core);
    this.#core?.file.close();
    this.#core = null;
  }

  /** Opens the database, or remembers why it cannot be opened. Disk errors and a folder with other data are thrown. */
  async openCore({
    demonstration,
    mayBeNew = false,
  }: {
    demonstration: boolean;
    mayBeNew?: boolean;
  }): Promise<void> {
    this.#trouble = null;
    try {
      const { core, isChecked, isNew } = await this.#open(demonstration, mayBeNew || demonstration);
      this.#core = core;
      this.#mayWrite = this.#prepareToWrite(core, isChecked);
      if (isNew) await this.#mayWrite;
      void this.#warmUp(core);
    } catch (error) {
      const blocked = error instanceof SillbookError && error.code.startsWith("store-");
      if (!blocked) throw error;
      this.#rememberTrouble(error);
    }
  }

  tellAnythingChanged(): void {
    const records = [{ entity: anyEntity, id: anyEntity }];
    this.options.emit({ kind: "changed", records, at: new Date().toISOString() });
  }

  #rememberTrouble(error: SillbookError): void {
    this.#trouble = new SillbookError(error.code, error.message, {
      ...error.details,
      backups: listBackups(this.folder),
    });
    this.#log.write("error", error.message, { code: error.code, details: error.details });
  }

  /** The check of the whole file where it is still to be done, the starter notes, today's backup. Never rejects. */
  async #prepareToWrite(core: DataCore, isChecked: boolean): Promise<void> {
    try {
      if (!isChecked) refuseDamaged(await this.#checkInBackground(core));
      if (this.#core !== core) return;
      installStarterNotes(core);
      await this.#backUpDaily();
    } catch (error) {
      if (this.#core !== core) return;
      const isStore = error instanceof SillbookError && error.code.startsWith("store-");
      if (!isStore) return this.#logUnexpected(error, "preparing to write");
      this.closeCore();
      this.#rememberTrouble(error);
      this.tellAnythingChanged();
    }
  }

  /** Reads the ranked search index or builds it, between requests, a slice at a time. */
  async #warmUp(core: DataCore): Promise<void> {
    try {
      await core.search.read(this.folder.searchIndex);
      do await nextTurn();
      while (this.#core === core && !core.search.buildSlice());
      if (this.#core === core) this.#keepIndex(core);
    } catch (error) {
      if (this.#core === core) this.#logUnexpected(error, "building the search index");
    }
  }

  /** Without the file the next start builds the index anew: nobody has to be told. */
  #keepIndex(core: DataCore): void {
    try {
      core.search.keep(this.folder.searchIndex);
    } catch (error) {
      this.#log.write("error", "The search index could not be kept.", { error: String(error) });
    }
  }

  /** What is wrong with the database, in SQLite's words. Where the background cannot look, this thread does. */
  async #checkInBackground(core: DataCore): Promise<readonly string[]> {
    const { check, signal } = this.checking;
    try {
      return (await check(this.folder.database, signal)).problems;
    } catch (error) {
      if (this.#core !== core) return [];
      this.#logUnexpected(error, "checking the database");
      return quickCheck(core.file);
    }
  }

  async #open(demonstration: boolean, mayBeNew: boolean): Promise<Opened> {
    if (databaseHasVanished(this.folder) && !mayBeNew) {
      throw new SillbookError(
        "store-damaged",
        "The database file is missing, but backups of it are here. Nothing was created in its place.",
      );
    }
    const { database } = this.folder;
    const isNew = !fs.existsSync(database);
    const file = await openSqliteOnDisk(database);
    try {
      const pending = pendingMigrations(file);
      const isSmall = fs.statSync(database).size <= (this.options.checkedFirstUpTo ?? smallDatabase);
      const isChecked = isNew || isSmall || pending.length > 0;
      if (isChecked && !isNew) refuseDamaged(quickCheck(file));
      if (!isNew && pending.length > 0)
        await makeBackup(this.folder, file, "before-migration", this.checking);
      applyMigrations(file, pending, () => new Date().toISOString());
      await this.#fill(file, demonstration);
      const core = new DataCore(file, {
        folder: this.folder.folder,
        programVersion: this.options.programVersion,
        emit: this.options.emit,
        logUnexpected: (error, operation) => this.#logUnexpected(error, operation),
        ...(this.options.wallClock ? { wallClock: this.options.wallClock } : {}),
        checkAnswers: this.options.checkAnswers ?? false,
      });
      return { core, isChecked, isNew };
    } catch (error) {
      file.close();
      throw error;
    }
  }

  async #fill(file: SqliteFile, demonstration: boolean): Promise<void> {
    if (!demonstration) return;
    const holdsData = (file.get<{ count: number }>(countChangesSql)?.count ?? 0) > 0;
    if (!holdsData) {
      fillDemonstration(file, {
        folder: this.folder.folder,
        programVersion: this.options.programVersion,
        now: this.options.wallClock?.() ?? Date.now(),
        emit: this.options.emit,
      });
      return;
    }
    const core = new DataCore(file, {
      folder: this.folder.folder,
      programVersion: this.options.programVersion,
    });
    if (core.device.read<boolean>("demonstration") !== true) {
      throw new SillbookError(
        "folder-not-empty",
        "That folder holds a company's own data. The demonstration needs a folder of its own.",
      );
    }
  }

  async #backUpDaily(): Promise<void> {
    const file = this.#core?.file;
    if (!file) return;
    const today = new Date().toISOString().slice(0, 10);
    const done = listBackups(this.folder).some(
      (backup) => backup.kind === "daily" && backup.madeAt.slice(0, 10) === today,
    );
    if (done) return;
    try {
      await makeBackup(this.folder, file, "daily", this.checking);
    } catch (error) {
      if (this.#closing.signal.aborted) return;
      // A full disk must not keep people from their data; Settings shows that the newest backup is old.
      this.#log.write("error", "The daily backup failed.", { error: String(error) });
    }
  }

  async #maintain(request: OperationRequest): Promise<unknown> {
    const input = parseInput(findOperation(request.operation), request.input);
    if (request.operation === "backup.list") return { backups: listBackups(this.folder) };
    const work = maintenanceHandlers[request.operation as MaintenanceName] as (
      session: DataSession,
      input: unknown,
    ) => Promise<unknown>;
    return work(this, input);
  }

  #enqueue<Result>(work: () => Promise<Result>): Promise<Result> {
    const result = this.#last.then(work);
    this.#last = result.catch(() => undefined);
    return result;
  }

  #logUnexpected(error: unknown, operation: string): void {
    const words = error instanceof Error ? (error.stack ?? error.message) : String(error);
    this.#log.write("error", "Unexpected error.", { operation, error: words });
  }
}

function isRead(request: OperationRequest): boolean {
  const kind = Object.hasOwn(operations, request.operation)
    ? operations[request.operation as OperationName].kind
    : "read";
  return kind === "read" || rescueOperations.has(request.operation);
}

function quickCheck(file: SqliteFile): readonly string[] {
  const said = file.all<{ quick_check: string }>(quickCheckSql).map((row) => row.quick_check);
  return said.length === 1 && said[0] === "ok" ? [] : said;
}

function refuseDamaged(problems: readonly string[]): void {
  if (problems.length > 0) throw new SillbookError("store-damaged", undefined, { problems });
}
