/** Values SQLite takes here. Anything else is a defect and is refused by the store. */
export type SqlValue = string | number | null;
export type SqlParameters = readonly SqlValue[] | Readonly<Record<string, SqlValue>>;

/** The part of the database that features use. Implemented by the SQLite file on the real disk. */
export interface Store {
  all<Row>(sql: string, parameters?: SqlParameters): Row[];
  get<Row>(sql: string, parameters?: SqlParameters): Row | undefined;
  run(sql: string, parameters?: SqlParameters): void;
}
