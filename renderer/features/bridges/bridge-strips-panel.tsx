import { useState } from "react";
import type { Bridge, Danger } from "#shared-lib/contract/bridge.ts";
import type { Landing } from "#shared-lib/contract/lift.ts";
import { formatSince } from "#shared-lib/format.ts";
import { BridgeStrip } from "../../ui/bridge-strip.tsx";
import { Button } from "../../ui/button.tsx";
import { ErrorNote } from "../../ui/error-note.tsx";
import { TriangleNumber } from "../../ui/triangle-number.tsx";
import { useCommand } from "../../use-command.ts";
import { useRead } from "../../use-read.ts";
import { bridgeAcross, chainPictureOf, openStripsOf } from "./bridge-parts.ts";
import { ClearDangerDialog } from "./danger-dialogs-panel.tsx";
import { ConfirmRemovalDialog, RecordRemovalDialog } from "./removal-dialogs.tsx";
import "./bridges.css";

interface BridgeStripsProps {
  readonly liftId: string;
}

/**
 * Above everything on every screen of a lift: one strip for each danger and each open bridge, with the step that ends
 * it. Nothing is shown while nothing is open. Triangles are numbered from 1, dangers first, as `openStripsOf` says.
 */
export function BridgeStrips({ liftId }: BridgeStripsProps) {
  const register = useRead("bridge.list", { liftId }, { entities: ["bridge", "danger"] });
  const open = register.value === undefined ? [] : openStripsOf(register.value);
  const found = useRead("lift.find", { id: liftId }, { enabled: open.length > 0, entities: ["landing"] });
  if (register.error !== undefined) {
    return <ErrorNote error={register.error} onRetry={register.reload} retryWord="Read the register again" />;
  }
  const firstBridge = open.find((strip) => strip.kind === "bridge");
  return open.map((strip) =>
    strip.kind === "danger" ? (
      <DangerStrip key={strip.danger.id} number={strip.number} danger={strip.danger} />
    ) : (
      <OpenBridgeStrip
        key={strip.bridge.id}
        number={strip.number}
        bridge={strip.bridge}
        landings={found.value?.landings ?? []}
        hasKey={strip === firstBridge}
      />
    ),
  );
}

interface OpenBridgeStripProps {
  readonly number: number;
  readonly bridge: Bridge;
  readonly landings: readonly Landing[];
  readonly hasKey: boolean;
}

function OpenBridgeStrip({ number, bridge, landings, hasKey }: OpenBridgeStripProps) {
  const [asks, setAsks] = useState(false);
  const now = new Date();
  const chain = chainPictureOf(bridge, landings);
  const removed = bridge.removedAt !== null;
  const word = removed ? "Confirm removal" : "Record removal";
  useCommand({
    name: `${word} of bridge ${bridge.number}`,
    keys: "B",
    group: "Lift",
    when: hasKey,
    run: () => setAsks(true),
  });
  const takenOut = !removed
    ? ""
    : `. Taken out ${formatSince(bridge.removedAt ?? now, now)}, ${bridge.removedBy?.name ?? ""}; the second check is missing`;
  const Asked = removed ? ConfirmRemovalDialog : RecordRemovalDialog;
  return (
    <>
      <BridgeStrip
        number={number}
        across={bridgeAcross(bridge)}
        terminals={bridge.points}
        since={formatSince(bridge.setAt, now)}
        by={`${bridge.setBy.name}${takenOut}`}
        chain={chain.contacts}
        bridgedAt={chain.bridgedAt}
        action={
          <Button
            kind="act"
            onPress={() => setAsks(true)}
            label={`${word}, bridge ${bridge.number}`}
            {...(hasKey ? { keys: "B" } : {})}
          >
            {word}
          </Button>
        }
      />
      <Asked bridge={bridge} open={asks} onClose={() => setAsks(false)} />
    </>
  );
}

function DangerStrip({ number, danger }: { readonly number: number; readonly danger: Danger }) {
  const [asks, setAsks] = useState(false);
  return (
    <>
      <section className="bridge-strip danger-strip" aria-label="Danger">
        <div className="bridge-says">
          <TriangleNumber number={number} />
          <p>
            <b className="pencil">Danger: car door and landing door found bridged together.</b>{" "}
            {sentence(danger.words)} Found {formatSince(danger.foundAt, new Date())}, {danger.foundBy.name}.
            Every further step on this lift waits until it is cleared.
          </p>
        </div>
        <Button kind="act" onPress={() => setAsks(true)}>
          Record how it was cleared
        </Button>
      </section>
      <ClearDangerDialog danger={danger} open={asks} onClose={() => setAsks(false)} />
    </>
  );
}

function sentence(words: string): string {
  return /[.!?]$/.test(words) ? words : `${words}.`;
}
