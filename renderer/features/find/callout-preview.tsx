import type { OutputOf } from "#shared-lib/contract/operations.ts";
import { formatDayAndTime } from "#shared-lib/format.ts";
import { LiftState } from "../../ui/lift-state.tsx";
import { Mark } from "../../ui/mark.tsx";
import { RuledTitle } from "../../ui/ruled-title.tsx";
import { useRead } from "../../use-read.ts";
import { sentenceCase } from "../fault-note/note-words.ts";
import { PlaceLink } from "./place-link.tsx";
import { PreviewRead } from "./preview-read.tsx";

const entities = ["callout", "callout event", "visit", "recorded fix", "bridge", "danger", "lift"];

export function CalloutPreview({ id }: { readonly id: string }) {
  const read = useRead("callout.find", { id }, { entities });
  const visits = useRead("visit.list", { calloutId: id }, { entities }).value?.visits ?? [];
  return (
    <PreviewRead read={read}>
      {(found) => (
        <>
          <div className="spread find-preview-head">
            <h2 className="find-preview-title">
              <PlaceLink place={{ to: `/callout/${id}` }}>“{found.callout.said}”</PlaceLink>
            </h2>
            <State found={found} />
          </div>
          <p className="soft label">
            {[
              found.callout.number,
              found.line.liftTitle,
              `received ${formatDayAndTime(found.callout.receivedAt)}`,
              found.callout.group,
            ].join(" · ")}
          </p>
          {found.lift !== null && <LiftState lift={found.lift} />}
          {found.line.next !== null && <p className="label">Next to be recorded: {found.line.next}</p>}
          <section>
            <RuledTitle>What ended it</RuledTitle>
            <Ended found={found} />
            {visits.map(({ fix }) =>
              fix?.noteId ? (
                <p key={fix.id}>
                  <PlaceLink place={{ to: `/note/${fix.noteId}` }} kind="quiet">
                    Belongs to fault note {fix.noteNumber}
                  </PlaceLink>
                </p>
              ) : null,
            )}
          </section>
          <div className="buttons">
            <PlaceLink place={{ to: `/callout/${id}` }} kind="plain">
              Open the callout
            </PlaceLink>
            {found.lift !== null && (
              <PlaceLink place={{ to: `/lift/${found.lift.id}` }} kind="quiet">
                {found.lift.title}
              </PlaceLink>
            )}
          </div>
        </>
      )}
    </PreviewRead>
  );
}

type Found = OutputOf<"callout.find">;

function State({ found: { line } }: { readonly found: Found }) {
  if (line.ending === null) return <Mark kind="received" word="Open" strong />;
  return (
    <Mark
      kind={line.ending === "left out of service" ? "stepped" : "closed"}
      word={sentenceCase(line.ending)}
      strong
    />
  );
}

function Ended({ found: { line, callout } }: { readonly found: Found }) {
  if (line.ending === null) return <p>Not ended yet.</p>;
  if (line.cause === "" && line.fix === "") {
    const why = callout.endingReason === "" ? "" : `: ${callout.endingReason}`;
    return (
      <p>
        Ended as {line.ending}
        {why}. No cause is recorded.
      </p>
    );
  }
  return (
    <>
      <p className="strong">{line.cause}</p>
      <p className="find-words">{line.fix}</p>
    </>
  );
}
