import { Link } from "@tanstack/react-router";
import { useState } from "react";
import type { CheckLine } from "#shared-lib/contract/check.ts";
import { formatSince } from "#shared-lib/format.ts";
import { Checkbox } from "../../ui/checkbox.tsx";
import { EmptyState } from "../../ui/empty-state.tsx";
import { ErrorNote } from "../../ui/error-note.tsx";
import { RuledTitle } from "../../ui/ruled-title.tsx";
import { useRead } from "../../use-read.ts";
import { SaveList } from "../export/save-list-panel.tsx";
import { CheckCounts } from "./check-counts.tsx";

const most = 200;

/** Signal checks, newest first. Where a lift is chosen beside, the list can show only its own. */
export function CheckList({ liftId }: { readonly liftId: string | null }) {
  const [only, setOnly] = useState(false);
  const wanted = only && liftId !== null ? { liftId } : {};
  const entities = ["check", "check step", "lift", "site", "person"];
  const open = useRead(
    "check.list",
    { ...wanted, open: true, limit: most },
    { entities, keepPrevious: true },
  );
  const done = useRead(
    "check.list",
    { ...wanted, open: false, limit: most },
    { entities, keepPrevious: true },
  );
  const error = open.error ?? done.error;
  const [unfinished, finished] = [open.value?.checks, done.value?.checks];
  return (
    <>
      {error !== undefined && (
        <ErrorNote
          error={error}
          onRetry={() => {
            open.reload();
            done.reload();
          }}
        />
      )}
      {liftId !== null && (
        <Checkbox checked={only} onChange={setOnly}>
          Only checks of the chosen lift
        </Checkbox>
      )}
      {unfinished?.length === 0 && finished?.length === 0 && (
        <EmptyState>
          Here the signal checks will stand, newest first. Choose a lift and a plan to start one.
        </EmptyState>
      )}
      {unfinished !== undefined && unfinished.length > 0 && (
        <Checks title="Not finished" checks={unfinished} asked={{ ...wanted, open: true }} />
      )}
      {finished !== undefined && finished.length > 0 && (
        <Checks title="Finished" checks={finished} asked={{ ...wanted, open: false }} />
      )}
    </>
  );
}

interface ChecksProps {
  readonly title: string;
  readonly checks: readonly CheckLine[];
  readonly asked: { readonly liftId?: string; readonly open: boolean };
}

function Checks({ title, checks, asked }: ChecksProps) {
  const now = new Date();
  return (
    <section aria-label={title}>
      <RuledTitle
        count={checks.length === most ? `the newest ${most}` : checks.length}
        aside={<SaveList list="checks" input={asked} what={`${title} checks`} />}
      >
        {title}
      </RuledTitle>
      <ul className="checks-list">
        {checks.map((check) => (
          <li key={check.id}>
            <Link className="checks-row checks-check" to="/checks/$id" params={{ id: check.id }}>
              <span className="checks-what">
                <b>{check.liftTitle}</b>
                <span>{check.planName}</span>
              </span>
              <span className="checks-counts">
                <CheckCounts passed={check.passed} failed={check.failed} unchecked={check.unchecked} />
              </span>
              <span className="checks-who soft label">
                {check.by.name}, {formatSince(check.startedAt, now)}
              </span>
            </Link>
          </li>
        ))}
      </ul>
    </section>
  );
}
