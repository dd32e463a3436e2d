import type { CalloutLine } from "#shared-lib/contract/callout.ts";
import { formatSince } from "#shared-lib/format.ts";
import { Button } from "../../ui/button.tsx";
import { MarkShape } from "../../ui/mark.tsx";
import { useCommand } from "../../use-command.ts";
import { calloutState } from "../callout/event-parts.ts";
import { type NewCalloutDraft, saidOf } from "./new-callout-draft.ts";

interface JoinOfferProps {
  /** Open callouts of the chosen lift. */
  readonly open: readonly CalloutLine[];
  readonly draft: NewCalloutDraft;
  readonly onJoin: (line: CalloutLine) => void;
  readonly pending: boolean;
}

/** A second caller for an open trouble is added to it, not logged twice. */
export function JoinOffer({ open, draft, onJoin, pending }: JoinOfferProps) {
  const [first] = open;
  const hasWords = saidOf(draft) !== "";
  useCommand({
    name: "Add this caller to the open callout",
    keys: "Alt J",
    group: "Desk",
    when: first !== undefined && hasWords && !pending,
    run: () => {
      if (first !== undefined) onJoin(first);
    },
  });
  if (first === undefined) return null;
  return (
    <section className="join-offer" aria-label="Open on this lift already">
      {open.map((line, i) => (
        <div key={line.id} className="spread">
          <p className="join-words">
            <MarkShape kind={calloutState(line).mark} /> <b>Open on this lift already:</b> {line.number},{" "}
            {formatSince(line.receivedAt, new Date())}
            {line.engineer === null ? ", with nobody yet" : `, with ${line.engineer.name}`}: “{line.said}”
          </p>
          <Button
            onPress={() => onJoin(line)}
            pending={pending}
            disabled={!hasWords}
            {...(i === 0 ? { keys: "Alt J" } : {})}
          >
            Add this caller to it
          </Button>
        </div>
      ))}
      {!hasWords && <p className="soft label join-hint">Write down what the caller says, then add it.</p>}
    </section>
  );
}
