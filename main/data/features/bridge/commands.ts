import { SillbookError } from "#shared-lib/errors.ts";
import { type Context, type Handlers, signerOf } from "../../context.ts";
import { clockWords, refuseFutureTime } from "../../times.ts";
import { refuseWhileDanger } from "../callout/commands.ts";
import { setLiftState } from "../callout/lift-state.ts";

function refuseBefore(at: string, earliest: string, what: string): void {
  if (at.slice(0, 16) < earliest.slice(0, 16)) {
    throw new SillbookError(
      "time-refused",
      `That is before ${what} at ${clockWords(earliest, at)}. Nothing was recorded.`,
      { at, earliest },
    );
  }
}

function refuseMissingWords(text: string, path: string, message: string): void {
  if (text.trim() === "")
    throw new SillbookError("input-invalid", message, { fields: [{ path: [path], message }] });
}

function takeOut(context: Context, liftId: string, since: string, reason: string): void {
  setLiftState(context, liftId, { state: "out of service", reason, since, comparedBy: null });
}

export const bridgeCommands: Handlers<
  "bridge.set" | "bridge.recordRemoval" | "bridge.confirmRemoval" | "danger.record" | "danger.clear"
> = {
  "bridge.set"(context, { setAt, ...fields }) {
    context.records.find("lift", fields.liftId);
    refuseWhileDanger(context, fields.liftId);
    const at = setAt ?? context.now;
    refuseFutureTime(at, context.now);
    const number = context.device.bridgeNumber();
    const saved = context.records.insert("bridge", {
      ...fields,
      number,
      setAt: at,
      setBy: signerOf(context).id,
      removalNote: "",
      proof: "",
    });
    takeOut(context, fields.liftId, at, `Bridge ${number} open, ${fields.points}`);
    return { ...saved, number };
  },

  "bridge.recordRemoval"(context, { id, version, removedBy, removedAt, note }) {
    const bridge = context.records.findAtVersion("bridge", id, version);
    if (bridge.removedAt)
      throw new SillbookError(
        "state-refused",
        `The removal of bridge ${bridge.number} is recorded already.`,
        { id },
      );
    refuseWhileDanger(context, bridge.liftId);
    const at = removedAt ?? context.now;
    refuseFutureTime(at, context.now);
    refuseBefore(at, bridge.setAt as string, "the bridge was set");
    context.records.find("person", removedBy);
    return context.records.update("bridge", bridge, { removedAt: at, removedBy, removalNote: note });
  },

  "bridge.confirmRemoval"(context, { id, version, checkedBy, checkedAt, proof }) {
    const bridge = context.records.findAtVersion("bridge", id, version);
    if (!bridge.removedAt)
      throw new SillbookError("state-refused", `Record first that bridge ${bridge.number} was taken out.`, {
        id,
      });
    if (bridge.checkedAt)
      throw new SillbookError(
        "state-refused",
        `The removal of bridge ${bridge.number} is confirmed already.`,
        { id },
      );
    refuseWhileDanger(context, bridge.liftId);
    refuseMissingWords(proof, "proof", "Say what proves that the contact works again.");
    const at = checkedAt ?? context.now;
    refuseFutureTime(at, context.now);
    refuseBefore(at, bridge.removedAt as string, "the bridge was taken out");
    context.records.find("person", checkedBy);
    return context.records.update("bridge", bridge, { checkedAt: at, checkedBy, proof });
  },

  "danger.record"(context, { liftId, words, foundAt }) {
    context.records.find("lift", liftId);
    const at = foundAt ?? context.now;
    refuseFutureTime(at, context.now);
    const saved = context.records.insert("danger", {
      liftId,
      words,
      foundAt: at,
      foundBy: signerOf(context).id,
      clearedHow: "",
    });
    takeOut(context, liftId, at, "Car door and landing door found bridged together");
    return saved;
  },

  "danger.clear"(context, { id, version, how, clearedBy, clearedAt }) {
    const danger = context.records.findAtVersion("danger", id, version);
    if (danger.clearedAt) throw new SillbookError("state-refused", "That danger is cleared already.", { id });
    const at = clearedAt ?? context.now;
    refuseFutureTime(at, context.now);
    refuseBefore(at, danger.foundAt as string, "it was found");
    context.records.find("person", clearedBy);
    return context.records.update("danger", danger, { clearedAt: at, clearedBy, clearedHow: how });
  },
};
