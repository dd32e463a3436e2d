import { Link } from "@tanstack/react-router";
import { useState } from "react";
import type { OutputOf } from "#shared-lib/contract/operations.ts";
import { formatSince } from "#shared-lib/format.ts";
import { Button } from "../../ui/button.tsx";
import { LiftState } from "../../ui/lift-state.tsx";
import { RuledTitle } from "../../ui/ruled-title.tsx";
import { LiftStateDialog } from "./lift-state-dialog-panel.tsx";
import { RepeatChain } from "./repeat-chain.tsx";

interface LiftSectionProps {
  readonly found: OutputOf<"callout.find">;
  readonly onSettle: () => void;
}

/** The lift of the callout: its state, and the chain of repeats this callout stands in. */
export function LiftSection({ found, onSettle }: LiftSectionProps) {
  const { lift, callout, chain } = found;
  const [changing, setChanging] = useState(false);
  const place = chain.findIndex((one) => one.id === callout.id);
  if (lift === null) {
    return (
      <section>
        <RuledTitle>Which lift</RuledTitle>
        <div className="stack">
          <p>
            <b className="pencil">Not settled yet.</b> The caller said: “{callout.liftWords}”.
          </p>
          <div className="buttons">
            <Button onPress={onSettle}>Settle which lift it is</Button>
          </div>
        </div>
      </section>
    );
  }
  return (
    <section>
      <RuledTitle>{lift.title}</RuledTitle>
      <div className="stack">
        <LiftState lift={lift} />
        <div className="buttons">
          <Button kind="quiet" onPress={() => setChanging(true)}>
            Change the lift’s state
          </Button>
          <Link to="/lift/$id" params={{ id: lift.id }}>
            Lift record
          </Link>
          <Link to="/site/$id" params={{ id: lift.siteId }}>
            Site<span className="wide-only-inline">: access, keys, contact</span>
          </Link>
        </div>
        {place > 0 && (
          <RepeatChain group={callout.group} earlier={chain.slice(0, place)} at={callout.receivedAt} />
        )}
        <Chain chain={chain} ownId={callout.id} />
      </div>
      {changing && <LiftStateDialog liftId={lift.id} onClose={() => setChanging(false)} />}
    </section>
  );
}

interface ChainProps {
  readonly chain: OutputOf<"callout.find">["chain"];
  readonly ownId: string;
}

function Chain({ chain, ownId }: ChainProps) {
  if (chain.length < 2) return null;
  return (
    <table className="table last-callouts" aria-label="Callouts of this chain of repeats">
      <tbody>
        {[...chain].reverse().map((one) => (
          <tr key={one.id}>
            <td className="nowrap">{formatSince(one.receivedAt, new Date())}</td>
            <td>
              {one.id === ownId ? (
                <b>This one</b>
              ) : (
                <>
                  <Link to="/callout/$id" params={{ id: one.id }}>
                    “{one.said}”
                  </Link>
                  . {one.endedHow}
                </>
              )}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
