import { Link } from "@tanstack/react-router";
import type { CalloutLine } from "#shared-lib/contract/callout.ts";
import type { OutputOf } from "#shared-lib/contract/operations.ts";
import { formatDay, formatSince } from "#shared-lib/format.ts";
import type { FaultGroup } from "#shared-lib/words.ts";
import { LiftState } from "../../ui/lift-state.tsx";
import { RuledTitle } from "../../ui/ruled-title.tsx";
import { RepeatChain } from "../callout/repeat-chain.tsx";
import { SimilarFaults } from "../cause/similar-faults-panel.tsx";

interface BesideProps {
  readonly beside: OutputOf<"callout.beside"> | undefined;
  readonly group: FaultGroup;
  readonly said: string;
  readonly liftId: string | null;
}

/** What helps while the caller speaks: the lift's state and past, and similar faults with what ended them. */
export function Beside({ beside, group, said, liftId }: BesideProps) {
  const lift = beside?.lift ?? null;
  return (
    <aside className="stack desk-side" aria-label="Beside the callout">
      <section>
        <RuledTitle>This lift</RuledTitle>
        {lift === null ? (
          <p className="soft">
            Choose a lift: its state, its last callouts and whether this is a repeat stand here.
          </p>
        ) : (
          <div className="stack">
            <div className="spread">
              <LiftState lift={lift} />
              <Link to="/lift/$id" params={{ id: lift.id }} className="wide-only">
                Lift record
              </Link>
            </div>
            <RepeatChain group={group} earlier={beside?.chain ?? []} />
            <LastCallouts callouts={beside?.last ?? []} />
          </div>
        )}
      </section>
      <SimilarFaults text={said} liftId={liftId} />
    </aside>
  );
}

const mostLast = 3;

function LastCallouts({ callouts }: { readonly callouts: readonly CalloutLine[] }) {
  if (callouts.length === 0) return <p className="soft">No callout of this lift is on record.</p>;
  return (
    <table className="table last-callouts" aria-label="Last callouts of this lift">
      <tbody>
        {callouts.slice(0, mostLast).map((line) => (
          <tr key={line.id}>
            <td className="nowrap">{dayWords(line.receivedAt)}</td>
            <td>
              <Link to="/callout/$id" params={{ id: line.id }}>
                “{line.said}”
              </Link>
              . {endedHow(line)}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function dayWords(at: string): string {
  const now = new Date();
  return new Date(at).getFullYear() === now.getFullYear()
    ? formatDay(at)
    : (formatSince(at, now).split(",")[0] ?? "");
}

function endedHow(line: CalloutLine): string {
  if (line.endedAt === null) return "Still open";
  const words = line.fix || line.cause || line.ending || "";
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}`;
}
