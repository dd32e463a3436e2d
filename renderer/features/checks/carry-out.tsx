import { Link, useNavigate } from "@tanstack/react-router";
import { type ReactNode, useState } from "react";
import type { CheckLine } from "#shared-lib/contract/check.ts";
import type { LiftLine } from "#shared-lib/contract/lift.ts";
import { errorWords } from "#shared-lib/errors.ts";
import { Button, buttonClass } from "../../ui/button.tsx";
import { Dialog } from "../../ui/dialog.tsx";
import { MarkShape } from "../../ui/mark.tsx";
import { RuledTitle } from "../../ui/ruled-title.tsx";
import { useCommand } from "../../use-command.ts";
import { CheckCounts } from "./check-counts.tsx";
import { CheckHead } from "./check-head.tsx";
import type { CheckStep } from "./check-types.ts";
import { ComparisonTable } from "./comparison-table.tsx";
import { FinishDialog } from "./finish-dialog.tsx";
import { countVerdicts, firstOpenStep, stepGroups } from "./step-groups.ts";
import { PlaceLine, StepList } from "./step-list.tsx";
import { placeWords } from "./step-words.ts";
import { StepWork } from "./step-work.tsx";
import { type CheckWork, useCheckWork } from "./use-check-work.ts";

interface CarryOutProps {
  readonly check: CheckLine;
  readonly line: LiftLine | undefined;
  readonly steps: readonly CheckStep[];
  readonly landingNames: ReadonlyMap<string, string>;
  /** Step that the address asks for. */
  readonly wanted: string | undefined;
}

/** A check being carried out: one step large, the others beside it. */
export function CarryOut({ check, line, steps, landingNames, wanted }: CarryOutProps) {
  const work = useCheckWork(check.id, steps);
  const { step, index, go } = useStepPlace(check.id, work, wanted);
  const [asks, setAsks] = useState<"finish" | "all steps" | null>(null);
  const groups = stepGroups(work.steps);
  useCommand({ name: "All steps", keys: "L", group: "Signal check", run: () => setAsks("all steps") });
  if (step === undefined) return null;
  const close = () => setAsks(null);
  const list = (
    <StepList
      groups={groups}
      numberOf={(one) => work.steps.findIndex(({ key }) => key === one.key) + 1}
      currentKey={step.key}
      onGo={(next) => {
        close();
        go(next);
      }}
    />
  );
  const danger = line?.danger === true;
  const name = step.landingId === null ? "" : (landingNames.get(step.landingId) ?? "");
  return (
    <>
      <CheckHead
        check={check}
        line={line}
        acts={<HeadActs id={check.id} onFinish={() => setAsks("finish")} />}
      />
      {danger && <DangerNote />}
      <PlaceLine groups={groups} currentKey={step.key} onGo={go} onAll={() => setAsks("all steps")} />
      <div className="check-columns">
        <nav className="check-beside" aria-label="Steps">
          <CheckCounts {...countVerdicts(work.steps)} />
          {list}
        </nav>
        <div className="check-work">
          {work.ready && (
            <StepWork
              work={work}
              step={step}
              liftId={check.liftId}
              count={`Step ${index + 1} of ${work.steps.length}`}
              place={name === "" ? placeWords(step) : `${placeWords(step)}, ${name}`}
              allowed={!danger}
            />
          )}
          <StepBar work={work} index={index} allowed={!danger} onGo={go} onFinish={() => setAsks("finish")} />
        </div>
      </div>
      <RuledTitle>Compared with the previous time</RuledTitle>
      <ComparisonTable steps={work.steps} />
      <FinishDialog check={check} work={work} open={asks === "finish"} onClose={close} onGo={go} />
      <AllSteps open={asks === "all steps"} onClose={close}>
        {list}
      </AllSteps>
    </>
  );
}

interface AllStepsProps {
  readonly open: boolean;
  readonly onClose: () => void;
  readonly children: ReactNode;
}

function AllSteps({ open, onClose, children }: AllStepsProps) {
  return (
    <Dialog title="All steps" open={open} onClose={onClose} actions={<Button onPress={onClose}>Back</Button>}>
      {children}
    </Dialog>
  );
}

/** Where in the check the person stands; kept in the address, so that the step is found again. A changed note is recorded on leaving. */
function useStepPlace(id: string, work: CheckWork, wanted: string | undefined) {
  const navigate = useNavigate();
  const [first] = useState(() => firstOpenStep(work.steps)?.key);
  const key = work.steps.some((one) => one.key === wanted) ? wanted : first;
  const index = work.steps.findIndex((one) => one.key === key);
  const step = work.steps[index];
  const go = (next: CheckStep) => {
    if (step !== undefined) void work.recordNote(step);
    void navigate({
      to: "/checks/$id",
      params: { id },
      search: { step: next.key },
      replace: true,
      resetScroll: false,
    });
  };
  return { step, index, go };
}

function HeadActs({ id, onFinish }: { readonly id: string; readonly onFinish: () => void }) {
  return (
    <div className="buttons">
      <Link className={buttonClass("quiet")} to="/print/check/$id" params={{ id }}>
        <span className="button-word">Print</span>
      </Link>
      <Button onPress={onFinish} keys="E">
        Finish the check
      </Button>
    </div>
  );
}

function DangerNote() {
  return (
    <div className="error-note" role="alert">
      <p className="error-says">
        <MarkShape kind="stepped" />
        <span>{errorWords["danger-open"]} Nothing more is recorded in this check until then.</span>
      </p>
    </div>
  );
}

interface StepBarProps {
  readonly work: CheckWork;
  readonly index: number;
  readonly allowed: boolean;
  readonly onGo: (step: CheckStep) => void;
  readonly onFinish: () => void;
}

/** Previous, not now and next, always at the lower edge where a thumb reaches them. */
function StepBar({ work, index, allowed, onGo, onFinish }: StepBarProps) {
  const [previous, step, next] = [work.steps[index - 1], work.steps[index], work.steps[index + 1]];
  const goTo = (target: CheckStep | undefined) => {
    if (target !== undefined) onGo(target);
  };
  useCommand({
    name: "Next step",
    keys: "N",
    group: "Signal check",
    when: next !== undefined,
    run: () => goTo(next),
  });
  useCommand({
    name: "Previous step",
    keys: "P",
    group: "Signal check",
    when: previous !== undefined,
    run: () => goTo(previous),
  });
  useCommand({ name: "Finish the check", keys: "E", group: "Signal check", run: onFinish });
  const cannot = () => {
    if (step !== undefined) void work.record(step, { kind: "not checked" });
  };
  useCommand({ name: "Cannot be checked now", keys: "X", group: "Signal check", when: allowed, run: cannot });
  const entry = step === undefined ? {} : work.entryOf(step.key);
  const hasMain = entry.order !== undefined || entry.value !== undefined;
  return (
    <div className="check-bar">
      <Button keys="P" onPress={() => goTo(previous)} disabled={previous === undefined}>
        Previous
      </Button>
      <Button keys="X" onPress={cannot} disabled={!allowed}>
        Cannot be checked now
      </Button>
      {next === undefined ? (
        <Button kind={hasMain ? "plain" : "first"} onPress={onFinish}>
          Last step: finish
        </Button>
      ) : (
        <Button kind={hasMain ? "plain" : "first"} keys="N" onPress={() => goTo(next)}>
          Next
        </Button>
      )}
    </div>
  );
}
