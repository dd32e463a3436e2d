import { formatQuantity } from "#shared-lib/format.ts";
import { Button } from "../../ui/button.tsx";
import { LiftState } from "../../ui/lift-state.tsx";
import { type MarkKind, markWords } from "../../ui/mark.tsx";
import { RuledTitle } from "../../ui/ruled-title.tsx";
import { Timeline } from "../../ui/timeline.tsx";
import { useRead } from "../../use-read.ts";
import { PlaceLink } from "./place-link.tsx";
import { PreviewRead } from "./preview-read.tsx";

interface LiftPreviewProps {
  readonly id: string;
  readonly chosen: boolean;
  readonly onUse: (id: string) => void;
}

export function LiftPreview({ id, chosen, onUse }: LiftPreviewProps) {
  const read = useRead("lift.find", { id });
  const timeline = useRead("lift.timeline", { id, limit: 5 }).value?.entries ?? [];
  return (
    <PreviewRead read={read}>
      {({ lift, line, site }) => (
        <>
          <h2 className="find-preview-title">
            <PlaceLink place={{ to: `/lift/${id}` }}>{line.title}</PlaceLink>
          </h2>
          <LiftState lift={line} />
          <p className="soft label">
            {[
              site.street,
              lift.driveKind,
              lift.controllerFamily === "" ? null : `controller family ${lift.controllerFamily}`,
              lift.ratedSpeed === null ? null : formatQuantity(lift.ratedSpeed, "m/s", 2),
              `${line.landingCount} landings`,
              lift.plateNumber,
            ]
              .filter((part) => part !== null && part !== "")
              .join(" · ")}
          </p>
          <div className="buttons">
            <PlaceLink place={{ to: `/lift/${id}` }} kind="plain">
              Open the lift
            </PlaceLink>
            {!chosen && (
              <Button kind="quiet" onPress={() => onUse(id)}>
                Search for this lift first
              </Button>
            )}
          </div>
          {timeline.length > 0 && (
            <section>
              <RuledTitle>Last on this lift</RuledTitle>
              <Timeline
                label="Last on this lift"
                items={timeline.map((entry) => ({
                  id: entry.id,
                  at: entry.at,
                  mark: markOf(entry.mark),
                  words: entry.sentence,
                  after: entry.second === "" ? undefined : entry.second,
                }))}
              />
            </section>
          )}
        </>
      )}
    </PreviewRead>
  );
}

function markOf(name: string): MarkKind {
  return name in markWords ? (name as MarkKind) : "flush";
}
