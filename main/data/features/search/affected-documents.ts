import type { TouchedRecord } from "../../record-store.ts";
import type { Store } from "../../store.ts";
import {
  calloutOfRowSql,
  calloutsOfLiftSql,
  fixesOfCalloutSql,
  liftsOfSiteSql,
  othersOfLiftSql,
} from "./search.sql.ts";
import { documentKey, type StoredKind } from "./search-documents.ts";

export interface AffectedDocument {
  readonly kind: StoredKind;
  readonly id: string;
}

/** Collects each document once, in the order in which it was named. */
export class AffectedDocuments {
  readonly #store: Store;
  readonly #found = new Map<string, AffectedDocument>();

  constructor(store: Store) {
    this.#store = store;
  }

  get list(): readonly AffectedDocument[] {
    return [...this.#found.values()];
  }

  add(kind: StoredKind, id: string | null | undefined): void {
    if (id) this.#found.set(documentKey(kind, id), { kind, id });
  }

  /** Documents whose words may be others after a record was written. */
  addTouched({ entity, id }: TouchedRecord): void {
    if (entity === "callout") this.#addCallout(id);
    else if (entity === "caller") this.#addCallout(this.#idFrom(calloutOfRowSql.caller, id));
    else if (entity === "visit") {
      this.add("visit", id);
      this.#addCallout(this.#idFrom(calloutOfRowSql.visit, id));
    } else if (entity === "recorded fix") {
      this.add("fix", id);
      this.#addCallout(this.#idFrom(calloutOfRowSql.fix, id));
    } else if (entity === "fault note") this.add("note", id);
    else if (entity === "lift") this.add("lift", id);
    else if (entity === "signal") this.add("lift", this.#idFrom(calloutOfRowSql.signal, id));
    else if (entity === "site") for (const lift of this.#ids(liftsOfSiteSql, id)) this.add("lift", lift);
    else if (entity === "check") this.add("check", id);
    else if (entity === "check step") this.add("check", this.#idFrom(calloutOfRowSql.checkStep, id));
  }

  /** Everything that names a lift, for when its name, site, drive or controller family changed. */
  addAllOfLift(liftId: string): void {
    for (const id of this.#ids(calloutsOfLiftSql, liftId)) this.add("callout", id);
    for (const { kind, id } of this.#store.all<AffectedDocument>(othersOfLiftSql, { id: liftId }))
      this.add(kind, id);
  }

  addAllOfSite(siteId: string): void {
    for (const lift of this.#ids(liftsOfSiteSql, siteId)) this.addAllOfLift(lift);
  }

  #addCallout(id: string | null | undefined): void {
    if (!id) return;
    this.add("callout", id);
    for (const fix of this.#ids(fixesOfCalloutSql, id)) this.add("fix", fix);
  }

  #idFrom(sql: string, id: string): string | null | undefined {
    return this.#store.get<{ id: string | null }>(sql, { id })?.id;
  }

  #ids(sql: string, id: string): string[] {
    return this.#store.all<{ id: string }>(sql, { id }).map((row) => row.id);
  }
}
