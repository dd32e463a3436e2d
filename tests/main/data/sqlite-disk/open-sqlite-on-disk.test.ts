import fs from "node:fs";
import path from "node:path";
import fc from "fast-check";
import { describe, expect, onTestFinished, test } from "vitest";
import { SillbookError } from "#shared-lib/errors.ts";
import { type OpenOptions, openSqliteOnDisk } from "../../../../main/data/sqlite-disk/open-sqlite-on-disk.ts";
import type { SqliteFile } from "../../../../main/data/sqlite-disk/sqlite-file.ts";
import { seededRandom } from "./seeded-random.ts";
import { temporaryFolder } from "./temporary-folder.ts";

const schema = `
  CREATE TABLE note (id INTEGER PRIMARY KEY, text TEXT NOT NULL UNIQUE, amount ANY) STRICT;
  CREATE VIRTUAL TABLE note_text USING fts4(text);
`;

async function open(file: string, options: OpenOptions = {}): Promise<SqliteFile> {
  const opened = await openSqliteOnDisk(file, options);
  onTestFinished(() => opened.close());
  return opened;
}

async function newStore(): Promise<{ file: string; store: SqliteFile }> {
  const file = path.join(temporaryFolder(), "sillbook.sqlite");
  const store = await open(file);
  store.exec(schema);
  return { file, store };
}

describe("a database on the disk", () => {
  test("keeps what was committed in the real file, without closing", async () => {
    const { file, store } = await newStore();
    store.run("INSERT INTO note (text) VALUES (:text)", { text: "door lock contact of landing 4 worn" });
    expect(fs.readFileSync(file).includes("door lock contact of landing 4 worn")).toBe(true);
  });

  test("flushes journal and database at every commit", async () => {
    const { store } = await newStore();
    store.run("INSERT INTO note (text) VALUES ('first')");
    const before = store.syncCount;
    store.transaction(() => store.run("INSERT INTO note (text) VALUES ('second')"));
    expect(store.syncCount - before).toBeGreaterThanOrEqual(3);
  });

  test("leaves no other file behind when it is created", async () => {
    const { file, store } = await newStore();
    store.close();
    const left = fs.readdirSync(path.dirname(file)).filter((name) => name !== path.basename(file));
    for (const name of left) {
      expect(name).toBe("sillbook.sqlite-journal");
      expect(fs.statSync(path.join(path.dirname(file), name)).size).toBe(0);
    }
  });

  test("can be opened several times in one process, each on its own file, also inside a running statement", async () => {
    const one = await newStore();
    const two = await newStore();
    for (let index = 0; index < 50; index += 1) {
      one.store.run("INSERT INTO note (text) VALUES (?)", [`one ${index}`]);
    }
    for (const row of one.store.iterate<{ text: string }>("SELECT text FROM note ORDER BY id")) {
      two.store.run("INSERT INTO note (text) VALUES (:text)", { text: `two of ${row.text}` });
    }
    const opened = await Promise.all([1, 2, 3].map(async () => (await newStore()).store));
    for (const store of opened) store.run("INSERT INTO note (text) VALUES ('at the same time')");
    expect(two.store.get("SELECT count(*) AS count, max(text) AS last FROM note")).toEqual({
      count: 50,
      last: "two of one 9",
    });
    expect(one.store.get("SELECT count(*) AS count FROM note")).toEqual({ count: 50 });
  });

  test("follows a link to the real file and keeps the journal beside that", async () => {
    const { file, store } = await newStore();
    store.run("INSERT INTO note (text) VALUES ('behind the link')");
    store.close();
    const link = path.join(temporaryFolder(), "link.sqlite");
    fs.symlinkSync(file, link);
    const linked = await open(link);
    linked.run("INSERT INTO note (text) VALUES ('through the link')");
    expect(linked.path).toBe(fs.realpathSync(file));
    expect(fs.existsSync(`${link}-journal`)).toBe(false);
    expect(linked.all("SELECT text FROM note")).toHaveLength(2);
  });

  test("refuses a commit when the file was removed while it is open", async () => {
    const { file, store } = await newStore();
    fs.renameSync(file, `${file}.moved`);
    expect(() => store.run("INSERT INTO note (text) VALUES ('to nowhere')")).toThrow(
      expect.objectContaining({ code: "disk-failed" }),
    );
  });

  test("opened for reading only, refuses to write and changes nothing", async () => {
    const { file, store } = await newStore();
    store.close();
    const before = fs.readFileSync(file);
    const reader = await open(file, { readOnly: true });
    expect(reader.all("SELECT * FROM note")).toEqual([]);
    expect(() => reader.run("INSERT INTO note (text) VALUES ('x')")).toThrow();
    reader.close();
    expect(fs.readFileSync(file).equals(before)).toBe(true);
    await expect(open(`${file}.none`, { readOnly: true })).rejects.toMatchObject({ code: "not-found" });
    await expect(open(`${file}.none`, { whenMissing: "refuse" })).rejects.toMatchObject({
      code: "not-found",
    });
    expect(fs.existsSync(`${file}.none`)).toBe(false);
  });
});

describe("values", () => {
  test("come back exactly as they were stored", async () => {
    const { store } = await newStore();
    const text = fc.string({ unit: "grapheme", maxLength: 200 });
    const value = fc.oneof(
      text,
      fc.integer(),
      fc.maxSafeInteger(),
      fc.double({ noNaN: true, noDefaultInfinity: true }),
      fc.uint8Array(),
      fc.constant(null),
    );
    fc.assert(
      fc.property(value, (stored) => {
        const row = store.get<{ read: unknown }>("SELECT :stored AS read", { stored });
        const expected = Object.is(stored, -0) ? 0 : stored;
        expect(row?.read).toEqual(expected);
      }),
      { seed: 20261124, numRuns: 400 },
    );
  });

  test("of 64 bits are exact in an INTEGER column", async () => {
    const { store } = await newStore();
    store.exec("CREATE TABLE wide (value INTEGER NOT NULL) STRICT");
    for (const value of [9007199254740993n, -9223372036854775808n, 9223372036854775807n, 42n]) {
      store.run("DELETE FROM wide");
      store.run("INSERT INTO wide (value) VALUES (:value)", { value });
      const read = store.get<{ value: number | bigint }>("SELECT value FROM wide")?.value;
      expect(BigInt(read ?? 0)).toBe(value);
    }
  });

  test("with a zero character keep what follows it", async () => {
    const { store } = await newStore();
    store.run("INSERT INTO note (text) VALUES (:text)", { text: "before\u0000after" });
    expect(store.get("SELECT text FROM note")).toEqual({ text: "before\u0000after" });
  });

  test.each<[string, string, unknown, RegExp]>([
    ["a missing name", "SELECT :first, :second", { first: 1 }, /:second/],
    ["an unknown name", "SELECT :first", { first: 1, frist: 2 }, /:frist/],
    ["undefined", "SELECT :first", { first: undefined }, /:first is undefined/],
    ["a truth value", "SELECT :first", { first: true }, /:first is true/],
    ["not a number", "SELECT :first", { first: Number.NaN }, /:first is NaN/],
    ["an object", "SELECT :first", { first: {} }, /:first is an object/],
    ["no values at all", "SELECT :first", undefined, /:first/],
    ["too few in a list", "SELECT ?, ?", [1], /1 values for 2 places/],
    ["too many in a list", "SELECT ?", [1, 2], /2 values for 1 places/],
    ["a list for names", "SELECT :first", [1], /named parameters first/],
    ["two statements", "SELECT 1; SELECT 2", undefined, /exec/],
    ["a parameter of another form", "SELECT $first", { first: 1 }, /:name/],
    ["a too large integer", "SELECT :first", { first: 2n ** 63n }, /:first/],
  ])("are refused with %s", async (_case, sql, parameters, message) => {
    const { store } = await newStore();
    expect(() => store.all(sql, parameters as never)).toThrow(message);
    expect(store.get("SELECT 1 AS one")).toEqual({ one: 1 });
  });

  test("are found only where SQLite sees a parameter", async () => {
    const { store } = await newStore();
    const sql = `SELECT ':no' AS "a:no", 'it''s :no' AS b, :yes AS c /* :no */ -- :no ;
      ;`;
    expect(store.get(sql, { yes: 7 })).toEqual({ "a:no": ":no", b: "it's :no", c: 7 });
  });

  test("of one name may be used several times", async () => {
    const { store } = await newStore();
    expect(store.get("SELECT :b AS b, :a AS a, :b AS again", { a: 1, b: 2 })).toEqual({
      b: 2,
      a: 1,
      again: 2,
    });
  });
});

describe("statements", () => {
  test("of the same text can run inside each other", async () => {
    const { store } = await newStore();
    store.exec("INSERT INTO note (text) VALUES ('a'), ('b'), ('c')");
    const pairs: string[] = [];
    for (const outer of store.iterate<{ text: string }>("SELECT text FROM note ORDER BY id")) {
      for (const inner of store.iterate<{ text: string }>("SELECT text FROM note ORDER BY id")) {
        pairs.push(outer.text + inner.text);
      }
    }
    expect(pairs).toEqual(["aa", "ab", "ac", "ba", "bb", "bc", "ca", "cb", "cc"]);
  });

  test("stay right after the schema changed", async () => {
    const { store } = await newStore();
    store.exec("INSERT INTO note (text) VALUES ('a')");
    expect(store.get("SELECT * FROM note")).toEqual({ id: 1, text: "a", amount: null });
    store.exec("ALTER TABLE note ADD COLUMN place TEXT");
    expect(store.get("SELECT * FROM note")).toEqual({ id: 1, text: "a", amount: null, place: null });
  });

  test("left unfinished do not hold the database", async () => {
    const { store } = await newStore();
    store.exec("INSERT INTO note (text) VALUES ('a'), ('b')");
    for (const _row of store.iterate("SELECT * FROM note")) break;
    store.exec("DROP TABLE note");
    expect(() => store.all("SELECT * FROM note")).toThrow(/no such table/);
  });

  test("more than the cache holds do not pile up in memory", async () => {
    const { store } = await newStore();
    for (let index = 0; index < 500; index += 1) store.get(`SELECT ${index} AS number`);
    const before = store.memoryBytes();
    for (let index = 0; index < 20_000; index += 1) store.get(`SELECT ${index} AS number, 'x' AS text`);
    expect(store.memoryBytes()).toBe(before);
  });

  test("with a mistake name it and the statement", async () => {
    const { store } = await newStore();
    expect(() => store.run("INSERT INTO missing VALUES (1)")).toThrow(/no such table: missing \(in: INSERT/);
    store.run("INSERT INTO note (text) VALUES ('once')");
    expect(() => store.run("INSERT INTO note (text) VALUES ('once')")).toThrow(
      expect.objectContaining({ name: "SqliteError", isConstraint: true }),
    );
  });

  test("tell how many rows they changed", async () => {
    const { store } = await newStore();
    store.exec("INSERT INTO note (text) VALUES ('a'), ('b'), ('c')");
    expect(store.run("UPDATE note SET amount = 1 WHERE id < ?", [3])).toEqual({ changes: 2 });
    expect(store.run("DELETE FROM note WHERE id = 99")).toEqual({ changes: 0 });
  });
});

describe("a transaction", () => {
  test("leaves nothing of itself when its work throws, and says why", async () => {
    const { store } = await newStore();
    store.run("INSERT INTO note (text) VALUES ('kept')");
    expect(() =>
      store.transaction(() => {
        store.run("INSERT INTO note (text) VALUES ('gone')");
        throw new Error("the reason");
      }),
    ).toThrow("the reason");
    expect(store.all("SELECT text FROM note")).toEqual([{ text: "kept" }]);
    expect(store.inTransaction).toBe(false);
  });

  test("is rolled back when the commit fails", async () => {
    const { store } = await newStore();
    store.exec("CREATE TABLE part (note INTEGER REFERENCES note (id) DEFERRABLE INITIALLY DEFERRED) STRICT");
    expect(() => store.transaction(() => store.run("INSERT INTO part (note) VALUES (99)"))).toThrow(
      /FOREIGN KEY constraint failed/,
    );
    expect(store.all("SELECT * FROM part")).toEqual([]);
    expect(store.transaction(() => "next")).toBe("next");
  });

  test("does not take asynchronous work or another transaction", async () => {
    const { store } = await newStore();
    expect(() =>
      store.transaction(async () => {
        store.run("INSERT INTO note (text) VALUES ('gone')");
      }),
    ).toThrow(/async/);
    expect(() => store.transaction(() => store.transaction(() => 1))).toThrow(/inside another/);
    expect(store.all("SELECT * FROM note")).toEqual([]);
  });
});

describe("a file that is no good", () => {
  async function filledFile(): Promise<string> {
    const { file, store } = await newStore();
    store.transaction(() => {
      for (let index = 0; index < 400; index += 1) {
        const text = `note ${index} ${"levelling ".repeat(20)}`;
        store.run("INSERT INTO note (text) VALUES (:text)", { text });
        store.run("INSERT INTO note_text (text) VALUES (:text)", { text });
      }
    });
    store.close();
    return file;
  }

  const random = seededRandom(7);
  const damages: [string, (file: string) => void, string[]][] = [
    [
      "random bytes",
      (file) => overwrite(file, 0, 4096, () => random() * 256),
      ["store-foreign", "store-damaged"],
    ],
    ["only its first half", (file) => fs.truncateSync(file, fs.statSync(file).size / 2), ["store-damaged"]],
    ["a header of zeros", (file) => overwrite(file, 0, 100, () => 0), ["store-foreign", "store-damaged"]],
    ["nothing in it", (file) => fs.truncateSync(file, 0), ["store-damaged"]],
    ["a single byte", (file) => fs.writeFileSync(file, "x"), ["store-foreign"]],
    ["a text", (file) => fs.writeFileSync(file, "shopping list\n".repeat(500)), ["store-foreign"]],
    ["a damaged table of contents", (file) => overwrite(file, 100, 300, () => 0xff), ["store-damaged"]],
  ];

  test.each(damages)("with %s is refused and left as it is", async (_case, damage, codes) => {
    const file = await filledFile();
    damage(file);
    const before = fs.readFileSync(file);
    const refusal = await openSqliteOnDisk(file).then(
      () => "opened",
      (error: unknown) => error,
    );
    expect(refusal).toBeInstanceOf(SillbookError);
    expect(codes).toContain((refusal as SillbookError).code);
    expect((refusal as SillbookError).details).toMatchObject({ path: file });
    expect(fs.readFileSync(file).equals(before)).toBe(true);
  });

  test("but a folder is refused", async () => {
    const folder = temporaryFolder();
    await expect(openSqliteOnDisk(folder)).rejects.toMatchObject({ code: "store-foreign" });
    expect(fs.readdirSync(folder)).toEqual([]);
  });

  test("but another program's database is refused and left as it is", async () => {
    const { file, store } = await newStore();
    store.exec("PRAGMA application_id = 7");
    store.close();
    const before = fs.readFileSync(file);
    await expect(openSqliteOnDisk(file)).rejects.toMatchObject({
      code: "store-foreign",
      details: { applicationId: 7 },
    });
    expect(fs.readFileSync(file).equals(before)).toBe(true);
  });

  test("but missing while its journal has content is not replaced by a new one", async () => {
    const file = await filledFile();
    fs.writeFileSync(`${file}-journal`, "the rest of a transaction");
    fs.rmSync(file);
    await expect(openSqliteOnDisk(file)).rejects.toMatchObject({ code: "store-damaged" });
    expect(fs.existsSync(file)).toBe(false);
  });

  test("but in a folder that does not exist is an error of the disk", async () => {
    const file = path.join(temporaryFolder(), "none", "sillbook.sqlite");
    await expect(openSqliteOnDisk(file)).rejects.toMatchObject({ code: "disk-failed" });
  });
});

function overwrite(file: string, from: number, to: number, byte: () => number): void {
  const content = fs.readFileSync(file);
  for (let index = from; index < to; index += 1) content[index] = byte();
  fs.writeFileSync(file, content);
}
