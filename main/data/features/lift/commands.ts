import { SillbookError } from "#shared-lib/errors.ts";
import { type Handlers, signerOf } from "../../context.ts";
import { fromRow, type StoredRecord } from "../../record-store.ts";
import { refuseFutureTime } from "../../times.ts";
import { listLandingsSql } from "./lift.sql.ts";

/** Landings have versions of their own, which the version of the lift does not follow. */
function refuseOtherLandings(
  seen: readonly { readonly id: string; readonly version: number }[],
  present: readonly StoredRecord[],
): void {
  const same =
    seen.length === present.length &&
    present.every((landing) =>
      seen.some(({ id, version }) => id === landing.id && version === landing.version),
    );
  if (!same) throw new SillbookError("version-conflict", undefined, { entity: "landing", present });
}

export const liftCommands: Handlers<
  "lift.add" | "lift.change" | "lift.setState" | "lift.setLandings" | "signal.add" | "signal.change"
> = {
  "lift.add"(context, { landings, ...fields }) {
    context.records.find("site", fields.siteId);
    const lift = context.records.insert("lift", {
      ...fields,
      state: "in service",
      stateReason: "",
      stateSince: null,
      stateBy: null,
      stateComparedBy: null,
    });
    for (const landing of landings) context.records.insert("landing", { ...landing, liftId: lift.id });
    return lift;
  },

  "lift.change"(context, { id, version, fields }) {
    if (fields.siteId) context.records.find("site", fields.siteId);
    return context.records.update("lift", context.records.findAtVersion("lift", id, version), fields);
  },

  "lift.setState"(context, { id, version, state, reason, at, registerComparedBy }) {
    const lift = context.records.findAtVersion("lift", id, version);
    const since = at ?? context.now;
    refuseFutureTime(since, context.now);
    if (state !== "in service" && reason === "") {
      throw new SillbookError("input-invalid", "Say why: the reason is seen wherever the lift is seen.", {
        fields: [{ path: ["reason"], message: "Say why." }],
      });
    }
    if (lift.state === "out of service" && state !== "out of service" && !registerComparedBy) {
      throw new SillbookError("register-not-compared");
    }
    if (registerComparedBy) context.records.find("person", registerComparedBy);
    return context.records.update("lift", lift, {
      state,
      stateReason: reason,
      stateSince: since,
      stateBy: signerOf(context).name,
      stateComparedBy: registerComparedBy,
    });
  },

  "lift.setLandings"(context, { liftId, version, seen, landings }) {
    const lift = context.records.findAtVersion("lift", liftId, version);
    const present = context.store
      .all<Record<string, unknown>>(listLandingsSql, { liftId })
      .map((row) => fromRow("landing", row));
    if (seen) refuseOtherLandings(seen, present);
    const kept = new Set(landings.map((landing) => landing.id).filter((id) => id !== undefined));
    for (const id of kept) {
      if (!present.some((landing) => landing.id === id))
        throw new SillbookError("not-found", "That landing is not of this lift.", { id });
    }
    for (const landing of present)
      if (!kept.has(landing.id)) context.records.setDeleted("landing", landing, true);
    for (const { id, ...fields } of landings) {
      const existing = present.find((landing) => landing.id === id);
      if (existing) context.records.update("landing", existing, fields);
      else context.records.insert("landing", { ...fields, liftId });
    }
    return { id: lift.id, version: lift.version };
  },

  "signal.add"(context, fields) {
    context.records.find("lift", fields.liftId);
    return context.records.insert("signal", fields);
  },

  "signal.change"(context, { id, version, fields }) {
    return context.records.update("signal", context.records.findAtVersion("signal", id, version), fields);
  },
};
