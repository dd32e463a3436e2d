import { Link } from "@tanstack/react-router";
import type { CheckLine } from "#shared-lib/contract/check.ts";
import { formatDate, formatDayAndTime } from "#shared-lib/format.ts";
import { printPage } from "../../shell-client.ts";
import { Button, buttonClass } from "../../ui/button.tsx";
import { Caution } from "../../ui/caution.tsx";
import { EmptyState } from "../../ui/empty-state.tsx";
import { ErrorNote } from "../../ui/error-note.tsx";
import { Mark } from "../../ui/mark.tsx";
import { PageTitle } from "../../ui/page-title.tsx";
import { PrintSheet } from "../../ui/print-sheet.tsx";
import { useProgram } from "../../use-program.ts";
import { useRead } from "../../use-read.ts";
import type { CheckStep } from "./check-types.ts";
import { countWords } from "./step-groups.ts";
import {
  expectedWords,
  foundWords,
  placeWords,
  sourceWords,
  verdictMarks,
  verdictWords,
} from "./step-words.ts";
import { usePrintPages } from "./use-print-pages.ts";
import "./checks.css";

/** The record of a check on as many A4 pages as it takes. */
export function CheckPrintPage({ id }: { readonly id: string }) {
  const { device } = useProgram();
  const read = useRead("check.find", { id });
  const plans = useRead("check.plans", {});
  if (read.value === undefined) {
    return (
      <>
        <PageTitle title="Record of a signal check" />
        {read.error === undefined ? (
          <EmptyState>The check is being read.</EmptyState>
        ) : (
          <ErrorNote error={read.error} onRetry={read.reload} />
        )}
      </>
    );
  }
  const { check, steps } = read.value;
  const cautions = plans.value?.plans.find((plan) => plan.id === check.planId)?.cautions ?? noCautions;
  return (
    <>
      <div className="print-bar screen-only">
        <PageTitle title={`Record: ${check.planName}, ${check.liftTitle}`}>
          Record of a signal check
        </PageTitle>
        <Button kind="first" onPress={printPage}>
          Print
        </Button>
        <Link className={buttonClass("quiet")} to="/checks/$id" params={{ id }}>
          <span className="button-word">Back to the check</span>
        </Link>
      </div>
      <RecordSheets check={check} steps={steps} cautions={cautions} company={device.company?.name ?? ""} />
    </>
  );
}

const noCautions: readonly string[] = [];

interface RecordSheetsProps {
  readonly check: CheckLine;
  readonly steps: readonly CheckStep[];
  readonly cautions: readonly string[];
  readonly company: string;
}

function RecordSheets({ check, steps, cautions, company }: RecordSheetsProps) {
  const { ref, pages } = usePrintPages(steps, cautions);
  const [site, ...lift] = check.liftTitle.split(", ");
  return (
    <div ref={ref}>
      {pages.map((page, i) => (
        <PrintSheet
          key={page[0]?.key ?? "none"}
          title={check.planName}
          company={company}
          site={site ?? check.liftTitle}
          lift={lift.join(", ")}
          date={formatDate(check.startedAt)}
          who={check.by.name}
          page={`${i + 1} of ${pages.length}`}
        >
          {i === 0 && <RecordHead check={check} cautions={cautions} />}
          <StepTable steps={page} from={steps.findIndex(({ key }) => key === page[0]?.key) + 1} />
        </PrintSheet>
      ))}
    </div>
  );
}

function RecordHead({
  check,
  cautions,
}: {
  readonly check: CheckLine;
  readonly cautions: readonly string[];
}) {
  return (
    <div className="stack check-record-head">
      <h2>Signal check: {check.planName}</h2>
      <p>
        <b>{check.liftTitle}</b>. Started {formatDayAndTime(check.startedAt)} by {check.by.name},{" "}
        {check.finishedAt === null ? (
          <b>not finished: steps may still be added</b>
        ) : (
          `finished ${formatDayAndTime(check.finishedAt)}`
        )}
        . {countWords(check)}. The verdicts are computed from what was found; what is unchecked is not proved.
      </p>
      {cautions.length > 0 && <Caution>{cautions.join(" ")}</Caution>}
    </div>
  );
}

function StepTable({ steps, from }: { readonly steps: readonly CheckStep[]; readonly from: number }) {
  return (
    <table className="table check-record" aria-label={`Steps ${from} to ${from + steps.length - 1}`}>
      <thead>
        <tr>
          <th scope="col">No.</th>
          <th scope="col">Step</th>
          <th scope="col">Expected</th>
          <th scope="col">Found, verdict</th>
        </tr>
      </thead>
      <tbody>
        {steps.map((step, i) => (
          <tr key={step.key}>
            <td>{from + i}</td>
            <td>
              <b>{placeWords(step)}.</b> {step.title}
              {step.note !== "" && <span className="check-row-note">Note: {step.note}</span>}
            </td>
            <td>
              {expectedWords(step.expected)}
              <span className="check-row-note">{sourceWords(step)}</span>
            </td>
            <td>
              <Mark
                kind={verdictMarks[step.verdict]}
                word={`${verdictWords[step.verdict]}: ${foundWords(step.found, step.expected)}`}
                strong={step.verdict === "failed"}
              />
              {step.at !== null && (
                <span className="check-row-note">
                  {step.by?.name}, {formatDayAndTime(step.at)}
                </span>
              )}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
