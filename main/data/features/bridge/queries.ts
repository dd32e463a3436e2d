import type { Bridge, Danger } from "#shared-lib/contract/bridge.ts";
import type { Handlers } from "../../context.ts";
import { listBridgesSql, listDangersSql } from "./bridge.sql.ts";

type Row = Readonly<Record<string, string | number | null>>;

function named(id: unknown, name: unknown): { id: string; name: string } | null {
  return typeof id === "string" ? { id, name: typeof name === "string" ? name : "" } : null;
}

function toBridge({ deleted: _deleted, setByName, removedByName, checkedByName, ...row }: Row): Bridge {
  return {
    ...(row as unknown as Bridge),
    setBy: named(row.setBy, setByName) ?? { id: "", name: "" },
    removedBy: named(row.removedBy, removedByName),
    checkedBy: named(row.checkedBy, checkedByName),
    open: row.checkedAt === null,
  };
}

function toDanger({ deleted: _deleted, foundByName, clearedByName, ...row }: Row): Danger {
  return {
    ...(row as unknown as Danger),
    foundBy: named(row.foundBy, foundByName) ?? { id: "", name: "" },
    clearedBy: named(row.clearedBy, clearedByName),
  };
}

export const bridgeQueries: Handlers<"bridge.list"> = {
  "bridge.list"(context, { liftId, open }) {
    const parameters: Record<string, string> = liftId ? { liftId } : {};
    const ofLift = liftId !== undefined;
    return {
      bridges: context.store.all<Row>(listBridgesSql(ofLift, open === true), parameters).map(toBridge),
      dangers: context.store.all<Row>(listDangersSql(ofLift, open === true), parameters).map(toDanger),
    };
  },
};
