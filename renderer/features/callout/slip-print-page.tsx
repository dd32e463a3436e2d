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
import { byTimeThenOrder, peopleWords } from "./event-words.ts";
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
        <h2>{line.liftTitle}</h2>
        {lift !== undefined && <Access lift={lift} />}
        <h2>What was said</h2>
        <p className="caller-words">“{shorten(callout.said, 400)}”</p>
        <PrintFacts
          facts={[
            ["Received", formatDayAndTime(callout.receivedAt)],
            ["Inside", insideWords(callout)],
            ["Caller", callout.caller],
            ["Call back on", callout.callBack],
            ["Display reading", callout.displayReading],
            ["Fault group", `${callout.group}${callout.groupSettled ? "" : " (proposed)"}`],
            [
              "Further callers",
              shorten(found.callers.map((one) => one.caller || "not named").join("; "), 120),
            ],
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

function insideWords(callout: OutputOf<"callout.find">["callout"]): string {
  if (callout.inside !== "people inside") return callout.inside;
  return [`${peopleWords(callout.insideCount)} inside`, shorten(callout.insideCondition, 160)]
    .filter(Boolean)
    .join(". ");
}
