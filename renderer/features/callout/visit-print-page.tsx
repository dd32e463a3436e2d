import { Link } from "@tanstack/react-router";
import "./callout.css";
import type { CauseStep } from "#shared-lib/contract/cause.ts";
import type { Visit } from "#shared-lib/contract/visit.ts";
import { formatDate, formatDayAndTime, formatTime } from "#shared-lib/format.ts";
import { printPage } from "../../shell-client.ts";
import { Button } from "../../ui/button.tsx";
import { ErrorNote } from "../../ui/error-note.tsx";
import { PageTitle } from "../../ui/page-title.tsx";
import { PrintSheet } from "../../ui/print-sheet.tsx";
import { useProgram } from "../../use-program.ts";
import { useRead } from "../../use-read.ts";
import { PrintFacts } from "./print-facts.tsx";
import { shorten } from "./shorten.ts";
import { writePart } from "./visit-draft.ts";

/** The visit on one page, for the customer and the file. */
export function VisitPrintPage({ id }: { readonly id: string }) {
  const read = useRead("visit.find", { id });
  const visit = read.value?.visit;
  return (
    <>
      <div className="print-bar">
        <PageTitle title={`Visit sheet ${visit?.calloutNumber ?? ""}`} />
        <Button kind="first" onPress={printPage} disabled={visit === undefined}>
          Print
        </Button>
        {visit?.calloutId != null ? (
          <Link to="/callout/$id" params={{ id: visit.calloutId }}>
            Back to the callout
          </Link>
        ) : (
          visit !== undefined && (
            <Link to="/lift/$id" params={{ id: visit.liftId }}>
              Back to the lift
            </Link>
          )
        )}
      </div>
      <ErrorNote error={read.error} onRetry={read.reload} />
      {visit !== undefined && <VisitSheet visit={visit} />}
    </>
  );
}

/** What fits on the one page beside the rest; all of them stand with the callout. */
const mostAnswers = 8;

function answerFact(step: CauseStep): readonly [string, string] {
  const [first] = step.after;
  const then = first === undefined ? "" : `; then first: ${first.title}`;
  return [shorten(step.checkTitle, 80), shorten(`${formatTime(step.at)}, ${step.outcomeWords}${then}`, 200)];
}

function VisitSheet({ visit }: { readonly visit: Visit }) {
  const { device } = useProgram();
  const callout = useRead(
    "callout.find",
    { id: visit.calloutId ?? "" },
    { enabled: visit.calloutId !== null },
  );
  const path = useRead("cause.path", { visitId: visit.id });
  const answered = (path.value?.steps ?? []).filter((step) => step.takenBack === null && !step.overtaken);
  const chargeable =
    visit.chargeable === null ? "not decided" : visit.chargeable ? "chargeable" : "not chargeable";
  return (
    <PrintSheet
      title={`Visit sheet${visit.calloutNumber === null ? "" : `, callout ${visit.calloutNumber}`}`}
      company={device.company?.name ?? ""}
      lift={visit.liftTitle}
      date={formatDate(visit.arrivedAt)}
      who={visit.engineer.name}
      page="1 of 1"
    >
      <div className="slip">
        <h2>{visit.liftTitle}</h2>
        <PrintFacts
          facts={[
            ["Visit", visit.kind],
            ["Arrived", formatDayAndTime(visit.arrivedAt)],
            ["Left", visit.leftAt === null ? "" : formatDayAndTime(visit.leftAt)],
            ["Engineer", visit.engineer.name],
            ["Charge", chargeable],
            ["Callout", callout.value === undefined ? "" : `“${shorten(callout.value.callout.said, 300)}”`],
            ["Callout ended", callout.value?.callout.ending ?? ""],
            ["Display reading", visit.displayReading],
          ]}
        />
        <h2>Found and done</h2>
        <PrintFacts
          facts={[
            ["Found", shorten(visit.found, 600)],
            ["Done", shorten(visit.done, 600)],
            ["Cause", shorten(visit.fix?.cause ?? "", 300)],
            ["Fix", shorten(visit.fix?.fix ?? "", 300)],
            ["Fault group", visit.fix?.group ?? ""],
            ["Parts used", shorten(visit.parts.map(writePart).join("; "), 400)],
            ["Readings", shorten(visit.readings.join("; "), 400)],
          ]}
        />
        {answered.length > 0 && (
          <>
            <h2>Checks answered on the way to the cause</h2>
            <PrintFacts facts={answered.slice(-mostAnswers).map(answerFact)} />
          </>
        )}
        <div className="slip-signs">
          <span>Engineer</span>
          <span>For the customer</span>
        </div>
      </div>
    </PrintSheet>
  );
}
