import type { SystemCallRecord } from "../../main/data/sqlite-disk/system-call-trace.ts";

/** The content of the files by path; what the disk holds. */
export type DiskContent = ReadonlyMap<string, Uint8Array>;

export interface PowerCutOptions {
  /** What is durable when the trace begins. */
  readonly before: DiskContent;
  readonly folder: string;
  readonly trace: readonly SystemCallRecord[];
  /** The power goes after so many records. */
  readonly cutAt: number;
  readonly random: () => number;
  /** A disk that says it has flushed and has not: the control, which must lose data. */
  readonly ignoresFlushing?: boolean;
}

type Change = Extract<SystemCallRecord, { call: "write" | "truncate" }>;
type NameChange = Extract<SystemCallRecord, { call: "create" | "remove" }>;

const sectorBytes = 512;

/**
 * One state the disk may be in after a power cut. What was flushed is there. Of what was not, each write or truncation has
 * reached the disk whole, in part (a whole number of sectors) or not at all, in any order; of new and removed names a
 * leading part, as file systems keep their order.
 */
export function contentAfterPowerCut(options: PowerCutOptions): DiskContent {
  const { before, folder, trace, cutAt, random, ignoresFlushing = false } = options;
  const durable = new Map(before);
  const names = new Set(before.keys());
  const pending = new Map<string, Change[]>();
  let pendingNames: NameChange[] = [];
  for (const record of trace.slice(0, cutAt)) {
    if (record.call === "create" || record.call === "remove") {
      pendingNames.push(record);
      if (record.call === "create") durable.set(record.path, new Uint8Array(0));
    } else if (record.call === "write" || record.call === "truncate") {
      pending.set(record.path, [...(pending.get(record.path) ?? []), record]);
    } else if (record.call === "sync" && !ignoresFlushing) {
      if (record.path === folder) {
        for (const change of pendingNames) applyName(names, change);
        pendingNames = [];
      } else {
        durable.set(
          record.path,
          (pending.get(record.path) ?? []).reduce(apply, contentOf(durable, record.path)),
        );
        pending.delete(record.path);
      }
    }
  }
  for (const change of pendingNames) {
    if (random() < 0.5) break;
    applyName(names, change);
  }
  return new Map(
    [...names].map((path) => [path, loseSome(contentOf(durable, path), pending.get(path) ?? [], random)]),
  );
}

function loseSome(content: Uint8Array, changes: readonly Change[], random: () => number): Uint8Array {
  return changes.reduce((state, change) => {
    const chance = random();
    if (chance < 0.45) return apply(state, change);
    if (chance < 0.6 && change.call === "write") {
      const length = Math.floor((random() * change.data.length) / sectorBytes) * sectorBytes;
      return apply(state, { ...change, data: change.data.subarray(0, length) });
    }
    return state;
  }, content);
}

function contentOf(content: DiskContent, path: string): Uint8Array {
  return content.get(path) ?? new Uint8Array(0);
}

function applyName(names: Set<string>, change: NameChange): void {
  if (change.call === "create") names.add(change.path);
  else names.delete(change.path);
}

function apply(content: Uint8Array, change: Change): Uint8Array {
  if (change.call === "truncate") {
    const shorter = new Uint8Array(change.length);
    shorter.set(content.subarray(0, change.length));
    return shorter;
  }
  const longer = new Uint8Array(Math.max(content.length, change.offset + change.data.length));
  longer.set(content);
  longer.set(change.data, change.offset);
  return longer;
}
