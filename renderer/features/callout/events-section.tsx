import { useMemo, useState } from "react";
import type { CalloutEvent, WithdrawnEvent } from "#shared-lib/contract/callout.ts";
import { formatSince } from "#shared-lib/format.ts";
import { Button } from "../../ui/button.tsx";
import { RuledTitle } from "../../ui/ruled-title.tsx";
import { Timeline, type TimelineItem } from "../../ui/timeline.tsx";
import { CorrectEventDialog } from "./event-dialogs.tsx";
import { byTimeThenOrder, markOfEvent } from "./event-parts.ts";

interface EventsSectionProps {
  readonly events: readonly CalloutEvent[];
  readonly withdrawn: readonly WithdrawnEvent[];
}

/** What happened, newest on top; every time can be corrected, and what was corrected stays to be seen. */
export function EventsSection({ events, withdrawn }: EventsSectionProps) {
  const [correcting, setCorrecting] = useState<CalloutEvent | null>(null);
  const items = useMemo(() => {
    const both = [
      ...events.map((event) => ({ ...event, item: eventItem(event, () => setCorrecting(event)) })),
      ...withdrawn.map((event) => ({ ...event, item: withdrawnItem(event) })),
    ];
    return both
      .sort(byTimeThenOrder)
      .reverse()
      .map(({ item }) => item);
  }, [events, withdrawn]);
  return (
    <section>
      <RuledTitle>Events</RuledTitle>
      <Timeline label="Events of this callout" items={items} />
      {correcting !== null && <CorrectEventDialog event={correcting} onClose={() => setCorrecting(null)} />}
    </section>
  );
}

function eventItem(event: CalloutEvent, onCorrect: () => void): TimelineItem {
  const was = event.earlier.at(-1);
  const now = new Date();
  return {
    id: event.id,
    at: event.at,
    mark: markOfEvent(event.kind),
    words: (
      <span className="spread event-line">
        <span>{eventSentence(event)}</span>
        <Button kind="quiet" label={`Correct ${event.kind}`} onPress={onCorrect}>
          Correct
        </Button>
      </span>
    ),
    ...(event.note === "" ? {} : { after: event.note }),
    ...(was === undefined
      ? {}
      : {
          corrected: {
            from: event.earlier.map((one) => formatSince(one.at, now)).join(", "),
            by: `${event.by.name || "an earlier record"}, ${formatSince(event.recordedAt, now)}`,
          },
        }),
  };
}

function eventSentence(event: CalloutEvent) {
  const by = event.by.name === "" ? "" : `, recorded by ${event.by.name}`;
  switch (event.kind) {
    case "passed on":
      return (
        <>
          <b>Passed on</b> to {event.to?.name ?? "nobody named"}
          {by}
        </>
      );
    case "arrived":
      return (
        <>
          <b>Arrived</b>: {event.to?.name ?? "on site"}
          {by}
        </>
      );
    case "back in service":
      return (
        <>
          <b>Back in service</b>
          {by}
          {event.registerComparedBy !== null &&
            `; register compared with the shaft by ${event.registerComparedBy.name}`}
        </>
      );
    default:
      return (
        <>
          <b>{event.kind.charAt(0).toUpperCase() + event.kind.slice(1)}</b>
          {by}
        </>
      );
  }
}

function withdrawnItem(event: WithdrawnEvent): TimelineItem {
  return {
    id: event.id,
    at: event.at,
    mark: markOfEvent(event.kind),
    words: <s className="soft">{event.kind.charAt(0).toUpperCase() + event.kind.slice(1)}</s>,
    after: `Taken back by ${event.withdrawnBy.name}, ${formatSince(event.withdrawnAt, new Date())}: ${event.reason}`,
  };
}
