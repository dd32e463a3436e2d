import type { Entity } from "#shared-lib/contract/history.ts";
import { SillbookError } from "#shared-lib/errors.ts";
import type { DeviceMemory } from "./device-memory.ts";
import { type ColumnKind, type EntityTable, entityTables } from "./entities.ts";
import { newIdentifier } from "./identifier.ts";
import {
  findRecordSql,
  insertChangeSql,
  insertRecordSql,
  markDeletedSql,
  updateRecordSql,
} from "./records.sql.ts";
import type { SqlValue, Store } from "./store.ts";

export type FieldValue =
  | string
  | number
  | boolean
  | null
  | readonly unknown[]
  | Readonly<Record<string, unknown>>;
export type Fields = Readonly<Record<string, FieldValue>>;

export interface StoredRecord {
  readonly id: string;
  readonly version: number;
  readonly createdAt: string;
  readonly deleted: boolean;
  readonly [field: string]: unknown;
}

export interface TouchedRecord {
  readonly entity: Entity;
  readonly id: string;
}

/** Number of the schema that change rows are written with; grows with every change of what a field means. */
export const schemaVersion = 1;

function toColumn(kind: ColumnKind, value: FieldValue): SqlValue {
  if (value === null) return null;
  if (kind === "boolean") return value === true ? 1 : 0;
  if (kind === "json") return JSON.stringify(value);
  if (typeof value === "string" || typeof value === "number") return value;
  throw new Error(`a ${kind} column cannot hold ${typeof value}`);
}

export function fromColumn(kind: ColumnKind, value: unknown): unknown {
  if (value === null || value === undefined) return null;
  if (kind === "boolean") return value === 1;
  if (kind === "json") return JSON.parse(value as string);
  return value;
}

/** A row as it lies in the table, with booleans and lists read back. */
export function fromRow(entity: Entity, row: Readonly<Record<string, unknown>>): StoredRecord {
  const record: Record<string, unknown> = {
    id: row.id,
    version: row.version,
    createdAt: row.createdAt,
    deleted: row.deleted === 1,
  };
  for (const [column, kind] of Object.entries(entityTables[entity].columns))
    record[column] = fromColumn(kind, row[column]);
  return record as StoredRecord;
}

/**
 * The only writer of records. Every call writes the row and its change rows in the transaction that is open, and
 * remembers which records and which lifts were touched, for the safety rule, the search index and the event stream.
 */
export class RecordStore {
  readonly #store: Store;
  readonly #device: DeviceMemory;
  readonly #now: () => string;
  #personId: string | null = null;
  #stamp: string | null = null;
  #touched = new Map<string, TouchedRecord>();
  #lifts = new Set<string>();

  constructor(store: Store, device: DeviceMemory, now: () => string) {
    this.#store = store;
    this.#device = device;
    this.#now = now;
  }

  /** Starts one command: all its changes carry one stamp and one person. */
  begin(personId: string | null): void {
    this.#personId = personId;
    this.#stamp = null;
    this.#touched = new Map();
    this.#lifts = new Set();
  }

  /** First start makes the person who then signs the rest of the command. */
  signAs(personId: string): void {
    this.#personId = personId;
  }

  get touched(): readonly TouchedRecord[] {
    return [...this.#touched.values()];
  }

  get touchedLifts(): readonly string[] {
    return [...this.#lifts];
  }

  find(entity: Entity, id: string): StoredRecord {
    const record = this.findIncludingDeleted(entity, id);
    if (record.deleted) throw new SillbookError("not-found", undefined, { entity, id });
    return record;
  }

  findIncludingDeleted(entity: Entity, id: string): StoredRecord {
    const row = this.#store.get<Record<string, unknown>>(findRecordSql(entityTables[entity]), { id });
    if (!row) throw new SillbookError("not-found", undefined, { entity, id });
    return fromRow(entity, row);
  }

  /** The record, if it still has the version a command was made from; otherwise a conflict that carries the present text. */
  findAtVersion(entity: Entity, id: string, version: number): StoredRecord {
    const record = this.find(entity, id);
    if (record.version !== version)
      throw new SillbookError("version-conflict", undefined, { entity, id, present: record });
    return record;
  }

  insert(entity: Entity, fields: Fields, id: string = newIdentifier()): { id: string; version: number } {
    const table = entityTables[entity];
    const parameters: Record<string, SqlValue> = { id, version: 1, createdAt: this.#now() };
    for (const [column, kind] of Object.entries(table.columns))
      parameters[column] = toColumn(kind, fields[column] ?? null);
    this.#store.run(insertRecordSql(table), parameters);
    this.#writeChange(entity, id, "*", fields);
    this.#touch(entity, table, id, fields);
    return { id, version: 1 };
  }

  /** Writes only fields that differ; without a difference the version stays as it is. */
  update(entity: Entity, record: StoredRecord, patch: Fields): { id: string; version: number } {
    const table = entityTables[entity];
    if (table.appendOnly) throw new Error(`${entity} is append-only`);
    const changed = Object.entries(patch).filter(
      ([field, value]) =>
        field in table.columns && JSON.stringify(value) !== JSON.stringify(record[field] ?? null),
    );
    if (changed.length === 0) return { id: record.id, version: record.version };
    const version = record.version + 1;
    const parameters: Record<string, SqlValue> = { id: record.id, version };
    for (const [field, value] of changed)
      parameters[field] = toColumn(table.columns[field] as ColumnKind, value);
    this.#store.run(
      updateRecordSql(
        table,
        changed.map(([field]) => field),
      ),
      parameters,
    );
    for (const [field, value] of changed) this.#writeChange(entity, record.id, field, value);
    this.#touch(entity, table, record.id, record);
    this.#touch(entity, table, record.id, patch);
    return { id: record.id, version };
  }

  setDeleted(entity: Entity, record: StoredRecord, deleted: boolean): { id: string; version: number } {
    const table = entityTables[entity];
    if (table.appendOnly) throw new Error(`${entity} is append-only`);
    const version = record.version + 1;
    this.#store.run(markDeletedSql(table), { id: record.id, version, deleted: deleted ? 1 : 0 });
    this.#writeChange(entity, record.id, "deleted", deleted);
    this.#touch(entity, table, record.id, record);
    return { id: record.id, version };
  }

  #touch(entity: Entity, table: EntityTable, id: string, fields: Readonly<Record<string, unknown>>): void {
    this.#touched.set(`${entity} ${id}`, { entity, id });
    if (!table.liftField) return;
    const lift = table.liftField === "id" ? id : fields[table.liftField];
    if (typeof lift === "string") this.#lifts.add(lift);
  }

  #writeChange(entity: Entity, rowId: string, field: string, value: unknown): void {
    this.#stamp ??= this.#device.stamp();
    this.#store.run(insertChangeSql, {
      stamp: this.#stamp,
      device: this.#device.deviceId,
      personId: this.#personId,
      entity,
      rowId,
      field,
      value: JSON.stringify(value),
      schemaVersion,
    });
  }
}
