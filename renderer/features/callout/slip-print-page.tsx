import { Link } from "@tanstack/react-router";
import "./callout.css";
import type { OutputOf } from "#shared-lib/contract/operations.ts";
import { formatDate, formatDayAndTime } from "#shared-lib/format.ts";
import { printPage } from "../../shell-client.ts";
import { Button } from "../../ui/button.tsx";
import { ErrorNote } from "../../ui/error-note.tsx";
import { PageTitle } from "../../ui/page-title.tsx";
import { PrintSheet } from "../../ui/print-sheet.tsx";
import { useProgram } from "../../use-program.ts";
import { useRead } from "../../use-read.ts";
import { byTimeThenOrder, peopleAreInside, peopleWords } from "./event-parts.ts";
import { insideCallBack } from "./inside-call-back.ts";
import { PrintFacts } from "./print-facts.tsx";
import { shorten } from "./shorten.ts";

/** The callout on one page, for the engineer who goes: what was said, how to get in, room to write. */
export function SlipPrintPage({ id }: { readonly id: string }) {
  const found = useRead("callout.find", { id });
  const liftId = found.value?.callout.liftId ?? null;
  const lift = useRead("lift.find", { id: liftId ?? "" }, { enabled: liftId !== null });
  const isReady = found.value !== undefined && (liftId === null || lift.value !== undefined);
  return (
    <>
      <div className="print-bar">
        <PageTitle title={`Callout slip ${found.value?.callout.number ?? ""}`} />
        <Button kind="first" onPress={printPage} disabled={!isReady}>
          Print
        </Button>
        <Link to="/callout/$id" params={{ id }}>
          Back to the callout
        </Link>
      </div>
      <ErrorNote error={found.error ?? lift.error} onRetry={found.reload} />
      {isReady && found.value !== undefined && <Slip found={found.value} lift={lift.value} />}
    </>
  );
}

interface SlipProps {
  readonly found: OutputOf<"callout.find">;
  readonly lift: OutputOf<"lift.find"> | undefined;
}

function Slip({ found, lift }: SlipProps) {
  const { device, person } = useProgram();
  const { callout, line } = found;
  return (
    <PrintSheet
      title={`Callout slip ${callout.number}`}
      company={device.company?.name ?? ""}
      {...(lift === undefined ? {} : { site: lift.site.name, lift: lift.lift.name })}
      date={formatDate(new Date())}
      who={person?.name ?? ""}
      page="1 of 1"
    >
      <div className="slip">
        {callout.inside === "people inside" && <PeopleInside found={found} />}
        <h2>{line.liftTitle}</h2>
        {lift !== undefined && <Access lift={lift} />}
        <h2>What was said</h2>
        <CallerWords {...callout} at={callout.receivedAt} />
        {found.callers.map((one) => (
          <CallerWords key={one.id} {...one} />
        ))}
        <PrintFacts
          facts={[
            ["Inside", callout.inside === "people inside" ? "" : callout.inside],
            ["Display reading", callout.displayReading],
            ["Fault group", `${callout.group}${callout.groupSettled ? "" : " (proposed)"}`],
          ]}
        />
        <Events found={found} />
        <PrintCaution />
        <h2>Written on site: found, done, readings, bridges</h2>
        <div className="slip-lines" />
      </div>
    </PrintSheet>
  );
}

function Access({ lift }: { readonly lift: OutputOf<"lift.find"> }) {
  const { site, line } = lift;
  return (
    <PrintFacts
      facts={[
        ["Address", [site.street, site.town].filter(Boolean).join(", ")],
        ["Plate number", lift.lift.plateNumber],
        ["Lift is", [line.state, line.stateReason].filter(Boolean).join(": ")],
        ["Open bridges", line.openBridges === 0 ? "" : `${line.openBridges}: see the register`],
        ["Access", shorten(site.accessNotes, 200)],
        ["Keys", shorten(site.keys, 120)],
        ["Hours", site.hours],
        ["Machinery", site.machineryLocation],
        ["Contact", [site.contactName, site.contactTelephone].filter(Boolean).join(", ")],
        ["Alarm line", lift.lift.alarmLine],
      ]}
    />
  );
}

function Events({ found }: { readonly found: OutputOf<"callout.find"> }) {
  const events = [...found.events].sort(byTimeThenOrder);
  return (
    <>
      <h2>Events</h2>
      <PrintFacts
        facts={events.slice(-6).map((event) => {
          const to = event.to === null ? "" : `: ${event.to.name}`;
          return [formatDayAndTime(event.at), `${event.kind}${to}`] as const;
        })}
      />
    </>
  );
}

function PrintCaution() {
  return (
    <p>
      <b>Caution.</b> Isolate and lock off before touching. No bridge left in; car and landing doors are never
      bridged together. Local codes and the maker’s instructions decide.
    </p>
  );
}

/** First on the sheet: the engineer must not have to look for it. */
function PeopleInside({ found }: { readonly found: OutputOf<"callout.find"> }) {
  const { callout, line } = found;
  const isOver = !peopleAreInside(line);
  return (
    <p className="slip-inside">
      <b>
        {peopleWords(callout.insideCount)} inside{isOver ? ", released" : ""}.
      </b>{" "}
      {callout.insideCondition !== "" && `${callout.insideCondition}. `}
      {!isOver && insideCallBack(found)}
    </p>
  );
}

type CallerWordsProps = Pick<
  OutputOf<"callout.find">["callers"][number],
  "at" | "caller" | "callBack" | "said"
>;

/** Never cut: what the second caller saw can be what the fault is found by. A long slip goes on overleaf. */
function CallerWords({ at, caller, callBack, said }: CallerWordsProps) {
  return (
    <div>
      <p>
        {formatDayAndTime(at)}, {caller === "" ? "caller not named" : caller},{" "}
        {callBack === "" ? "no number" : callBack}
      </p>
      <p className="caller-words">“{said}”</p>
    </div>
  );
}
