import type { ReactNode } from "react";
import { SafetyChain } from "./safety-chain.tsx";
import { TriangleNumber } from "./triangle-number.tsx";

export interface BridgeStripProps {
  /** Number of the triangle, the same as at its place on the drawing. */
  readonly number: number;
  /** "the landing 6 door contact" */
  readonly across: string;
  /** Terminal markings as on the site's drawing: "34–35". */
  readonly terminals?: string;
  /** "10:05" or "16 Nov, 10:05" */
  readonly since: string;
  readonly by: string;
  /** Words of the contacts in the order of the chain, shortened; the bridged one by its place in the list. */
  readonly chain?: readonly string[];
  readonly bridgedAt?: number;
  /** The one button, Record removal (kind "act"). */
  readonly action?: ReactNode;
}

/** On every screen of the lift, above everything, while a bridge is open on it. */
export function BridgeStrip(props: BridgeStripProps) {
  const { number, across, terminals, since, by, chain, bridgedAt, action } = props;
  return (
    <section className="bridge-strip" aria-label="Open bridge">
      <div className="bridge-says">
        <TriangleNumber number={number} />
        <p>
          <b className="pencil">Bridge open</b> across {across}
          {terminals !== undefined && terminals !== "" && (
            <>
              , <span className="marking">{terminals}</span>
            </>
          )}
          . Set {since}, {by}. This lift cannot be recorded as back in service.
        </p>
      </div>
      {chain !== undefined && bridgedAt !== undefined && (
        <div className="bridge-chain">
          <SafetyChain contacts={chain} bridgedAt={bridgedAt} />
        </div>
      )}
      {action}
    </section>
  );
}
