import { formatDate } from "#shared-lib/format.ts";
import { Mark } from "../../ui/mark.tsx";
import { RuledTitle } from "../../ui/ruled-title.tsx";
import { useRead } from "../../use-read.ts";
import { PlaceLink } from "./place-link.tsx";
import { PreviewRead } from "./preview-read.tsx";

export function FixPreview({ id }: { readonly id: string }) {
  const read = useRead("fix.find", { id }, { entities: ["recorded fix", "visit", "fault note"] });
  return (
    <PreviewRead read={read}>
      {({ fix }) => (
        <>
          <div className="spread find-preview-head">
            <h2 className="find-preview-title">{fix.cause}</h2>
            <Mark kind="recorded fix" strong />
          </div>
          <p className="soft label">
            {[fix.liftTitle, formatDate(fix.at), fix.by?.name, fix.group]
              .filter((part) => part !== undefined)
              .join(" · ")}
          </p>
          <section>
            <RuledTitle>What was done</RuledTitle>
            <p className="find-words">{fix.fix}</p>
          </section>
          <div className="buttons">
            {fix.calloutId !== null && (
              <PlaceLink place={{ to: `/callout/${fix.calloutId}` }} kind="plain">
                Open the callout it ended
              </PlaceLink>
            )}
            <PlaceLink place={{ to: `/lift/${fix.liftId}` }} kind="quiet">
              {fix.liftTitle}
            </PlaceLink>
            {fix.noteId === null ? (
              <PlaceLink place={{ to: "/note/new", search: { fromFix: fix.id } }} kind="quiet">
                Write a fault note from this fix
              </PlaceLink>
            ) : (
              <PlaceLink place={{ to: `/note/${fix.noteId}` }} kind="quiet">
                Belongs to fault note {fix.noteNumber}
              </PlaceLink>
            )}
          </div>
        </>
      )}
    </PreviewRead>
  );
}
