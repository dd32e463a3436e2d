import { Link } from "@tanstack/react-router";
import type { CheckLine } from "#shared-lib/contract/check.ts";
import { buttonClass } from "../../ui/button.tsx";
import { MarkShape } from "../../ui/mark.tsx";
import { RuledTitle } from "../../ui/ruled-title.tsx";
import { SaveList } from "../export/save-list-panel.tsx";
import { CheckCounts } from "./check-counts.tsx";
import type { CheckStep } from "./check-types.ts";
import { ComparisonTable } from "./comparison-table.tsx";
import { afterFinish } from "./finish-dialog.tsx";
import { OrderDrawing } from "./order-drawing.tsx";
import { placeWords } from "./step-words.ts";
import { WaysOn } from "./ways-on.tsx";

interface FinishedCheckProps {
  readonly check: CheckLine;
  readonly steps: readonly CheckStep[];
}

/** A finished check: what failed first, with its ways on, then every step beside the previous time. */
export function FinishedCheck({ check, steps }: FinishedCheckProps) {
  const failed = steps.filter(({ verdict }) => verdict === "failed");
  return (
    <div className="stack">
      <p className={failed.length > 0 ? "verdict pencil" : "verdict"}>
        <MarkShape kind={failed.length > 0 ? "stepped" : check.unchecked > 0 ? "unchecked" : "flush"} />
        <span>{resultWords(check)}</span>
      </p>
      <div className="spread">
        <CheckCounts passed={check.passed} failed={check.failed} unchecked={check.unchecked} />
        <div className="buttons">
          <Link
            className={buttonClass("plain")}
            to="/checks"
            search={{ lift: check.liftId, plan: check.planId }}
          >
            <span className="button-word">Check it again</span>
          </Link>
          <Link className={buttonClass("first")} to="/print/check/$id" params={{ id: check.id }}>
            <span className="button-word">Print the record</span>
          </Link>
        </div>
      </div>
      <p className="soft">{afterFinish}</p>
      {failed.length > 0 && (
        <section className="stack" aria-label="What failed">
          <RuledTitle count={failed.length}>Failed</RuledTitle>
          {failed.map((step) => (
            <FailedStep key={step.key} step={step} liftId={check.liftId} />
          ))}
        </section>
      )}
      <section aria-label="Every step">
        <RuledTitle count={steps.length} aside={<SaveList list="check steps" input={{ id: check.id }} />}>
          Every step, beside the previous time
        </RuledTitle>
        <ComparisonTable steps={steps} whole />
      </section>
    </div>
  );
}

function resultWords({ passed, failed, unchecked }: CheckLine): string {
  const all = passed + failed + unchecked;
  if (failed > 0) return failed === 1 ? `One of ${all} steps failed.` : `${failed} of ${all} steps failed.`;
  if (unchecked === 0) return all === 1 ? "The step passed." : `All ${all} steps passed.`;
  return `${passed} of ${all} steps passed; nothing is proved at the other ${unchecked}.`;
}

function FailedStep({ step, liftId }: { readonly step: CheckStep; readonly liftId: string }) {
  const { expected, found } = step;
  return (
    <article className="check-failed">
      <h3>{step.title}</h3>
      <p>
        {placeWords(step)}. {step.sentence}
        {step.note !== "" && ` Note: ${step.note}`}
      </p>
      {expected.kind === "order" && found?.kind === "order" && (
        <OrderDrawing expected={expected.order} seen={found.order} />
      )}
      <WaysOn step={step} liftId={liftId} />
    </article>
  );
}
