import { useSearch } from "@tanstack/react-router";
import { useMemo } from "react";
import type { CheckLine } from "#shared-lib/contract/check.ts";
import { EmptyState } from "../../ui/empty-state.tsx";
import { ErrorNote } from "../../ui/error-note.tsx";
import { PageTitle } from "../../ui/page-title.tsx";
import { useRead } from "../../use-read.ts";
import { BridgeStrips } from "../bridges/bridge-strips-panel.tsx";
import { CarryOut } from "./carry-out.tsx";
import { CheckHead } from "./check-head.tsx";
import type { CheckStep } from "./check-types.ts";
import { FinishedCheck } from "./finished-check.tsx";
import "./checks.css";

interface CheckPageProps {
  readonly id: string;
}

/** One signal check: carried out step by step while it is open, read once it is finished. */
export function CheckPage({ id }: CheckPageProps) {
  const read = useRead("check.find", { id }, { entities: ["check", "check step", "lift", "site", "person"] });
  if (read.value === undefined) {
    return (
      <>
        <PageTitle title="Signal check" />
        {read.error === undefined ? (
          <EmptyState>The check is being read.</EmptyState>
        ) : (
          <ErrorNote error={read.error} onRetry={read.reload} />
        )}
      </>
    );
  }
  return (
    <>
      <BridgeStrips liftId={read.value.check.liftId} />
      {read.error !== undefined && <ErrorNote error={read.error} onRetry={read.reload} />}
      <ReadCheck check={read.value.check} steps={read.value.steps} />
    </>
  );
}

interface ReadCheckProps {
  readonly check: CheckLine;
  readonly steps: readonly CheckStep[];
}

function ReadCheck({ check, steps }: ReadCheckProps) {
  const search: Record<string, unknown> = useSearch({ strict: false });
  const lift = useRead(
    "lift.find",
    { id: check.liftId },
    { entities: ["lift", "site", "landing", "bridge", "danger", "callout", "callout event"] },
  );
  const landingNames = useMemo(
    () => new Map(lift.value?.landings.map(({ id, name }) => [id, name])),
    [lift.value],
  );
  const line = lift.value?.line;
  if (check.finishedAt !== null) {
    return (
      <>
        <CheckHead check={check} line={line} />
        <FinishedCheck check={check} steps={steps} />
      </>
    );
  }
  return (
    <CarryOut
      check={check}
      line={line}
      steps={steps}
      landingNames={landingNames}
      wanted={typeof search.step === "string" ? search.step : undefined}
    />
  );
}
