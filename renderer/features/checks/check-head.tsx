import { Link } from "@tanstack/react-router";
import type { ReactNode } from "react";
import type { CheckLine } from "#shared-lib/contract/check.ts";
import type { LiftLine } from "#shared-lib/contract/lift.ts";
import { formatSince } from "#shared-lib/format.ts";
import { LiftState } from "../../ui/lift-state.tsx";
import { PageTitle } from "../../ui/page-title.tsx";

interface CheckHeadProps {
  readonly check: CheckLine;
  readonly line: LiftLine | undefined;
  readonly acts?: ReactNode;
}

/** What is checked, on which lift, by whom, since when, and the state of the lift. */
export function CheckHead({ check, line, acts }: CheckHeadProps) {
  const now = new Date();
  const { planName, liftTitle, liftId, by, startedAt, finishedAt } = check;
  return (
    <header className="check-head">
      <div className="check-names">
        <PageTitle title={`${planName}, ${liftTitle}`}>{planName}</PageTitle>
        <p className="row">
          <Link className="check-lift" to="/lift/$id" params={{ id: liftId }}>
            {liftTitle}
          </Link>
          {line !== undefined && <LiftState lift={line} short />}
          <span className="soft label">
            {by.name}, started {formatSince(startedAt, now)}
            {finishedAt !== null && `, finished ${formatSince(finishedAt, now)}`}
          </span>
        </p>
      </div>
      {acts}
    </header>
  );
}
