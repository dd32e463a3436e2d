import { Link } from "@tanstack/react-router";
import type { Visit } from "#shared-lib/contract/visit.ts";
import { formatSince, formatTime } from "#shared-lib/format.ts";
import { Button } from "../../ui/button.tsx";
import { ErrorNote } from "../../ui/error-note.tsx";
import { Mark } from "../../ui/mark.tsx";
import { RuledTitle } from "../../ui/ruled-title.tsx";
import { useRead } from "../../use-read.ts";

interface VisitsSectionProps {
  readonly calloutId: string;
  /** False while it is not settled which lift it is: a visit belongs to a lift. */
  readonly canRecord: boolean;
  readonly onRecord: () => void;
  readonly onCorrect: (visitId: string) => void;
  readonly onFix: (fixId: string) => void;
}

export function VisitsSection(props: VisitsSectionProps) {
  const { calloutId, canRecord, onRecord } = props;
  const read = useRead("visit.list", { calloutId }, { entities: ["visit", "recorded fix", "fault note"] });
  const visits = read.value?.visits ?? [];
  return (
    <section>
      <RuledTitle count={visits.length > 0 ? visits.length : undefined}>Visits</RuledTitle>
      <div className="stack">
        <ErrorNote error={read.error} onRetry={read.reload} />
        {visits.map((visit) => (
          <VisitShown key={visit.id} visit={visit} {...props} />
        ))}
        {read.value !== undefined && visits.length === 0 && <p className="soft">No visit is recorded yet.</p>}
        <div className="buttons">
          <Button keys="V" onPress={onRecord} disabled={!canRecord}>
            Record a visit
          </Button>
          {!canRecord && <span className="soft">Settle which lift it is first.</span>}
        </div>
      </div>
    </section>
  );
}

function VisitShown({ visit, onCorrect, onFix }: VisitsSectionProps & { readonly visit: Visit }) {
  const { fix } = visit;
  const facts = [
    ["Found", visit.found],
    ["Done", visit.done],
    ["Cause", fix?.cause ?? ""],
    ["Fix", fix?.fix ?? ""],
    ["Parts", visit.parts.map((part) => `${part.quantity} ${part.name} ${part.marking}`.trim()).join("; ")],
    ["Readings", visit.readings.join("; ")],
  ].filter(([, words]) => words !== "");
  return (
    <article className="visit" aria-label={`Visit of ${visit.engineer.name}`}>
      <p className="spread">
        <span>
          <b>{formatSince(visit.arrivedAt, new Date())}</b>
          {visit.leftAt !== null && ` to ${formatTime(visit.leftAt)}`}, {visit.engineer.name}
          <span className="soft">
            {" "}
            · {visit.kind}
            {visit.chargeable !== null && (visit.chargeable ? " · chargeable" : " · not chargeable")}
          </span>
        </span>
      </p>
      <dl className="facts">
        {facts.map(([name, words]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{words}</dd>
          </div>
        ))}
        {visit.displayReading !== "" && (
          <div>
            <dt>Display</dt>
            <dd className="marking">{visit.displayReading}</dd>
          </div>
        )}
      </dl>
      <div className="buttons">
        <Button kind="quiet" onPress={() => onCorrect(visit.id)}>
          Correct
        </Button>
        <Link to="/print/visit/$id" params={{ id: visit.id }}>
          Visit sheet
        </Link>
        {fix !== null && fix.noteId !== null && (
          <Link to="/note/$id" params={{ id: fix.noteId }}>
            Fault note {fix.noteNumber}
          </Link>
        )}
        {fix !== null && (
          <Button kind="quiet" onPress={() => onFix(fix.id)}>
            {fix.noteId === null ? "Attach the fix to a fault note" : "Change the fault note"}
          </Button>
        )}
        {fix === null && <Mark kind="unchecked" word="No cause recorded" />}
      </div>
    </article>
  );
}
