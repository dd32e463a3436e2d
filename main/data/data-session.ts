import fs from "node:fs";
import type { Envelope, OperationRequest, ProgramEvent } from "#shared-lib/contract/operation.ts";
import { SillbookError } from "#shared-lib/errors.ts";
import { listBackups, makeBackup } from "./backups.ts";
import { DataCore, failure, findOperation, parseInput } from "./data-core.ts";
import { type DataFolder, databaseHasVanished, openDataFolder } from "./data-folder.ts";
import { countChangesSql, quickCheckSql } from "./database.sql.ts";
import { fillDemonstration } from "./demonstration/fill-demonstration.ts";
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
}

const hour = 60 * 60 * 1000;
/** Answered also while the database cannot be opened, so that a backup can be put in its place. */
const rescueOperations: ReadonlySet<string> = new Set(["backup.list", "backup.restore"]);

/**
 * One data folder while the program runs on it: lock, self-test, opening with checks, backups before what could hurt,
 * and the requests, one after another. A damaged database is never opened: the session then answers only what helps to
 * put a backup in its place, and says so to everything else.
 */
export class DataSession {
  readonly folder: DataFolder;
  readonly options: SessionOptions;
  readonly #log: LogFile;
  #core: DataCore | null = null;
  #trouble: SillbookError | null = null;
  #last: Promise<unknown> = Promise.resolve();
  #dailyTimer: NodeJS.Timeout | undefined;

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
      session.#dailyTimer = setInterval(() => session.#enqueue(() => session.#backUpDaily()), hour);
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

  /** Answers with an envelope; never throws. Requests are answered in the order in which they came. */
  request(request: OperationRequest): Promise<Envelope> {
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

  close(): void {
    clearInterval(this.#dailyTimer);
    this.closeCore();
    this.folder.close();
  }

  closeCore(): void {
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
      const core = await this.#openChecked(demonstration, mayBeNew || demonstration);
      this.#core = core;
      this.#warmUp(core);
    } catch (error) {
      const blocked = error instanceof SillbookError && error.code.startsWith("store-");
      if (!blocked) throw error;
      this.#trouble = new SillbookError(error.code, error.message, {
        ...error.details,
        backups: listBackups(this.folder),
      });
      this.#log.write("error", error.message, { code: error.code, details: error.details });
    }
  }

  /** Builds the ranked search index between requests, a slice at a time. */
  #warmUp(core: DataCore): void {
    setImmediate(() => {
      if (this.#core === core && !core.search.buildSlice()) this.#warmUp(core);
    });
  }

  async #openChecked(demonstration: boolean, mayBeNew: boolean): Promise<DataCore> {
    if (databaseHasVanished(this.folder) && !mayBeNew) {
      throw new SillbookError(
        "store-damaged",
        "The database file is missing, but backups of it are here. Nothing was created in its place.",
      );
    }
    const isNew = !fs.existsSync(this.folder.database);
    const file = await openSqliteOnDisk(this.folder.database);
    try {
      if (!isNew) refuseDamaged(file);
      const pending = pendingMigrations(file);
      if (!isNew && pending.length > 0) await makeBackup(this.folder, file, "before-migration");
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
      installStarterNotes(core);
      await this.#backUpDaily(file);
      return core;
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

  async #backUpDaily(file: SqliteFile | undefined = this.#core?.file): Promise<void> {
    if (!file) return;
    const today = new Date().toISOString().slice(0, 10);
    const done = listBackups(this.folder).some(
      (backup) => backup.kind === "daily" && backup.madeAt.slice(0, 10) === today,
    );
    if (done) return;
    try {
      await makeBackup(this.folder, file, "daily");
    } catch (error) {
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

function refuseDamaged(file: SqliteFile): void {
  const problems = file.all<{ quick_check: string }>(quickCheckSql).map((row) => row.quick_check);
  if (problems.length === 1 && problems[0] === "ok") return;
  throw new SillbookError("store-damaged", undefined, { problems });
}
