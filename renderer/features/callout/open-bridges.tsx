import { useState } from "react";
import type { Bridge, Danger } from "#shared-lib/contract/bridge.ts";
import { formatSince } from "#shared-lib/format.ts";
import type { chainContacts } from "#shared-lib/words.ts";
import { BridgeStrip } from "../../ui/bridge-strip.tsx";
import { Button } from "../../ui/button.tsx";
import { Mark } from "../../ui/mark.tsx";
import { useRead } from "../../use-read.ts";
import { ClearDangerDialog, ConfirmRemovalDialog, RecordRemovalDialog } from "./bridge-dialogs.tsx";
import { Refused } from "./way-out.tsx";

/** Above everything on a screen of the lift: dangers and open bridges, each with the one step that ends it. */
export function OpenBridges({ liftId }: { readonly liftId: string }) {
  const { value, error } = useRead(
    "bridge.list",
    { liftId, open: true },
    { entities: ["bridge", "danger", "lift"] },
  );
  const dangers = (value?.dangers ?? []).filter((danger) => danger.clearedAt === null);
  return (
    <>
      <Refused error={error} />
      {dangers.map((danger) => (
        <DangerStrip key={danger.id} danger={danger} />
      ))}
      {(value?.bridges ?? [])
        .filter((bridge) => bridge.open)
        .map((bridge, i) => (
          <OpenBridge key={bridge.id} bridge={bridge} number={i + 1} />
        ))}
    </>
  );
}

function OpenBridge({ bridge, number }: { readonly bridge: Bridge; readonly number: number }) {
  const [asking, setAsking] = useState<"removal" | "check" | null>(null);
  const now = new Date();
  const isRemoved = bridge.removedAt !== null;
  const removal =
    bridge.removedAt !== null
      ? `. Removal recorded ${formatSince(bridge.removedAt, now)}${bridge.removedBy === null ? "" : ` by ${bridge.removedBy.name}`}; the second check is still to come`
      : "";
  const at = chainPlace[bridge.contact];
  return (
    <>
      <BridgeStrip
        number={number}
        across={acrossWords(bridge)}
        terminals={bridge.points}
        since={formatSince(bridge.setAt, now)}
        by={`${bridge.setBy.name} (${bridge.number})${removal}`}
        {...(at === null ? {} : { chain: chainWords, bridgedAt: at })}
        action={
          <Button kind="act" onPress={() => setAsking(isRemoved ? "check" : "removal")}>
            {isRemoved ? "Confirm removal" : "Record removal"}
          </Button>
        }
      />
      {asking === "removal" && <RecordRemovalDialog bridge={bridge} onClose={() => setAsking(null)} />}
      {asking === "check" && <ConfirmRemovalDialog bridge={bridge} onClose={() => setAsking(null)} />}
    </>
  );
}

function acrossWords(bridge: Bridge): string {
  const landing = bridge.landingMarking === null ? "" : ` at landing ${bridge.landingMarking}`;
  return `the ${bridge.contact}${landing}`;
}

/** The chain, simplified to five words; which of them the contact belongs to. */
const chainWords = ["stops", "limits", "governor", "car door", "landings"];
const chainPlace: { readonly [Contact in (typeof chainContacts)[number]]: number | null } = {
  "pit stop switch": 0,
  "car-top stop switch": 0,
  "final limit switch": 1,
  "buffer contact": 1,
  "governor contact": 2,
  "safety gear contact": 2,
  "slack rope contact": 2,
  "car door contact": 3,
  "landing door contact": 4,
  "landing door lock": 4,
  "other contact of the chain": null,
};

function DangerStrip({ danger }: { readonly danger: Danger }) {
  const [asking, setAsking] = useState(false);
  return (
    <section className="bridge-strip" aria-label="Danger">
      <p className="bridge-says">
        <span>
          <Mark kind="stepped" word="Car door and landing door found bridged together." pencil strong />{" "}
          {danger.words}. Found {formatSince(danger.foundAt, new Date())}, {danger.foundBy.name}. Every
          further step waits until this is cleared.
        </span>
      </p>
      <Button kind="act" onPress={() => setAsking(true)}>
        Record how it was cleared
      </Button>
      {asking && <ClearDangerDialog danger={danger} onClose={() => setAsking(false)} />}
    </section>
  );
}
