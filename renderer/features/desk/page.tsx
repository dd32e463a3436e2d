import { useSearch } from "@tanstack/react-router";
import { useMemo } from "react";
import "../callout/callout.css";
import "./desk.css";
import { useDraft } from "../../use-draft.ts";
import { useRead } from "../../use-read.ts";
import { Beside } from "./beside.tsx";
import { readCalloutListSearch } from "./callout-list-link.ts";
import { CalloutListPage } from "./callout-list-page.tsx";
import { FirstSteps } from "./first-steps.tsx";
import { NewCallout } from "./new-callout.tsx";
import { emptyCallout, groupOf } from "./new-callout-draft.ts";
import { OpenCallouts } from "./open-callouts.tsx";

/** The office's screen. With a list in the address it shows that list instead. */
export function DeskPage() {
  const search = useSearch({ strict: false }) as Readonly<Record<string, unknown>>;
  const { ids, list, title } = search;
  const choice = useMemo(() => readCalloutListSearch({ ids, list, title }), [ids, list, title]);
  return choice === null ? <Desk /> : <CalloutListPage choice={choice} />;
}

function Desk() {
  const draft = useDraft("desk.newCallout", emptyCallout);
  const { liftId, said } = draft.value;
  const group = groupOf(draft.value);
  const beside = useRead(
    "callout.beside",
    { liftId, group },
    { keepPrevious: true, enabled: liftId !== null },
  );
  // The answer about the lift before must never stand beside another one.
  const fitting = beside.value?.lift?.id === liftId ? beside.value : undefined;
  return (
    <>
      <FirstSteps />
      <div className="desk-log">
        <NewCallout draft={draft} beside={fitting} />
        <Beside beside={fitting} group={group} said={said} liftId={liftId} />
      </div>
      <OpenCallouts />
    </>
  );
}
