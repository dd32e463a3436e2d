import { randomBytes, randomInt } from "node:crypto";
import { type ClockState, formatStamp, nextStamp } from "#shared-lib/clock.ts";
import { readStateSql, writeStateSql } from "./records.sql.ts";
import type { Store } from "./store.ts";

/** Letters that are not mistaken for one another when read over a telephone. */
const codeLetters = "BCDFGHKLMNPRTVWX";

/** What this machine remembers about itself: its id, its short code, its clock, its counters. */
export class DeviceMemory {
  readonly #store: Store;
  readonly #wallClock: () => number;
  #clock: ClockState = { wall: 0, counter: 0 };
  #committedClock: ClockState = this.#clock;
  #deviceId = "";
  #shortCode = "";

  constructor(store: Store, wallClock: () => number) {
    this.#store = store;
    this.#wallClock = wallClock;
  }

  /** Reads what is stored; on a new database makes the device's id and short code. Call inside a transaction. */
  load(shortCode?: string): void {
    this.#deviceId = this.read<string>("device.id") ?? "";
    this.#shortCode = this.read<string>("device.shortCode") ?? "";
    this.#clock = this.read<ClockState>("device.clock") ?? this.#clock;
    this.#committedClock = this.#clock;
    if (this.#deviceId !== "") return;
    this.#deviceId = randomBytes(8).toString("hex");
    this.#shortCode =
      shortCode ?? Array.from({ length: 3 }, () => codeLetters[randomInt(codeLetters.length)]).join("");
    this.write("device.id", this.#deviceId);
    this.write("device.shortCode", this.#shortCode);
  }

  get deviceId(): string {
    return this.#deviceId;
  }

  get shortCode(): string {
    return this.#shortCode;
  }

  read<Value>(key: string): Value | null {
    const row = this.#store.get<{ value: string }>(readStateSql, { key });
    return row ? (JSON.parse(row.value) as Value) : null;
  }

  write(key: string, value: unknown): void {
    this.#store.run(writeStateSql, { key, value: JSON.stringify(value) });
  }

  /** The stamp of the next change. The clock is written in the same transaction as the change. */
  stamp(): string {
    this.#clock = nextStamp(this.#clock, this.#wallClock());
    this.write("device.clock", this.#clock);
    return formatStamp(this.#clock, this.#deviceId);
  }

  /** Memory follows the disk: after a commit the clock stands, after a rollback it returns. */
  committed(): void {
    this.#committedClock = this.#clock;
  }

  rolledBack(): void {
    this.#clock = this.#committedClock;
  }

  /** The next running number of a kind, as in 613. Unique on this device; the short code makes it unique elsewhere. */
  nextNumber(kind: "callout" | "note" | "bridge"): number {
    const key = `number.${kind}`;
    const next = (this.read<number>(key) ?? 0) + 1;
    this.write(key, next);
    return next;
  }

  calloutNumber(): string {
    return `${this.#shortCode}-${String(this.nextNumber("callout")).padStart(4, "0")}`;
  }

  noteNumber(): string {
    return `${this.#shortCode}-N${String(this.nextNumber("note")).padStart(3, "0")}`;
  }

  bridgeNumber(): string {
    return `${this.#shortCode}-B${String(this.nextNumber("bridge")).padStart(2, "0")}`;
  }
}
