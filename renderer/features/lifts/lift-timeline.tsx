import { useState } from "react";
import type { TimelineEntry } from "#shared-lib/contract/lift.ts";
import { Button } from "../../ui/button.tsx";
import { EmptyState } from "../../ui/empty-state.tsx";
import { ErrorNote } from "../../ui/error-note.tsx";
import { RuledTitle } from "../../ui/ruled-title.tsx";
import { Timeline } from "../../ui/timeline.tsx";
import { useRead } from "../../use-read.ts";
import { SaveList } from "../export/save-list-panel.tsx";
import { markOfEntry } from "./lift-words.ts";

const stepsOfLength = [12, 60, 300, 1000] as const;

export function LiftTimeline({ liftId }: { readonly liftId: string }) {
  const [step, setStep] = useState(0);
  const limit = stepsOfLength[step] ?? 1000;
  const read = useRead("lift.timeline", { id: liftId, limit }, { keepPrevious: true });
  const entries = read.value?.entries ?? [];
  const more = entries.length >= limit && step + 1 < stepsOfLength.length;
  return (
    <section>
      <RuledTitle aside={entries.length > 0 && <SaveList list="timeline" input={{ id: liftId }} />}>
        Timeline
      </RuledTitle>
      <ErrorNote error={read.error} onRetry={read.reload} />
      {read.value !== undefined && entries.length === 0 && (
        <EmptyState>Callouts, visits, checks, bridges and changes of this lift will stand here.</EmptyState>
      )}
      <Timeline label="Timeline of the lift" items={entries.map(timelineItem)} />
      {more && <Button onPress={() => setStep(step + 1)}>Earlier</Button>}
    </section>
  );
}

const needsPerson = ["bridge", "danger"];

export function timelineItem(entry: TimelineEntry) {
  const { id, at, kind, mark, sentence, second, by, opens } = entry;
  const by_ = by === "" ? "" : `${/[.!?”]$/.test(sentence) ? "" : "."} ${by}`;
  const words =
    opens === null || kind === "bridge" ? (
      sentence
    ) : (
      <a className="timeline-link" href={`#${opens}`}>
        {sentence}
      </a>
    );
  return {
    id,
    at,
    mark: markOfEntry(mark),
    pencil: mark === "stepped" || (needsPerson.includes(kind) && mark === "bridge"),
    words: (
      <>
        {words}
        {by_}
      </>
    ),
    ...(second === "" || sentence.includes(second) ? {} : { after: second }),
  };
}
