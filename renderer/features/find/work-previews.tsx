import type { StepVerdict } from "#shared-lib/contract/check.ts";
import { formatDate, formatDayAndTime } from "#shared-lib/format.ts";
import { Mark, type MarkKind } from "../../ui/mark.tsx";
import { RuledTitle } from "../../ui/ruled-title.tsx";
import { useRead } from "../../use-read.ts";
import { PlaceLink } from "./place-link.tsx";
import { PreviewRead } from "./preview-read.tsx";

const verdictMarks: { readonly [Verdict in StepVerdict]: MarkKind } = {
  passed: "flush",
  failed: "stepped",
  unchecked: "unchecked",
};

/** A signal check: what failed comes first. */
export function CheckPreview({ id }: { readonly id: string }) {
  const read = useRead("check.find", { id }, { entities: ["check", "check step"] });
  return (
    <PreviewRead read={read}>
      {({ check, steps }) => (
        <>
          <h2 className="find-preview-title">
            <PlaceLink place={{ to: `/checks/${id}` }}>{check.planName}</PlaceLink>
          </h2>
          <p className="soft label">
            {[check.liftTitle, formatDate(check.startedAt), check.by.name].join(" · ")}
          </p>
          <p>
            {check.passed} passed, {check.failed} failed, {check.unchecked} unchecked.
          </p>
          <section>
            <RuledTitle>Steps</RuledTitle>
            <ul className="find-plain-list">
              {[...steps]
                .sort((a, b) => Number(b.verdict === "failed") - Number(a.verdict === "failed"))
                .slice(0, 12)
                .map((step) => (
                  <li key={step.key}>
                    <Mark
                      kind={verdictMarks[step.verdict]}
                      word={step.verdict}
                      pencil={step.verdict === "failed"}
                    />{" "}
                    {step.title}
                  </li>
                ))}
            </ul>
          </section>
          <PlaceLink place={{ to: `/checks/${id}` }} kind="plain">
            Open the check
          </PlaceLink>
        </>
      )}
    </PreviewRead>
  );
}

export function VisitPreview({ id }: { readonly id: string }) {
  const read = useRead("visit.find", { id }, { entities: ["visit", "recorded fix"] });
  return (
    <PreviewRead read={read}>
      {({ visit }) => (
        <>
          <h2 className="find-preview-title">
            {visit.liftTitle}, {visit.kind}
          </h2>
          <p className="soft label">
            {[formatDayAndTime(visit.arrivedAt), visit.engineer.name, visit.calloutNumber]
              .filter((part) => part !== null)
              .join(" · ")}
          </p>
          {[
            ["Found", visit.found] as const,
            ["Done", visit.done] as const,
            ["Display reading", visit.displayReading] as const,
          ].map(([title, words]) =>
            words === "" ? null : (
              <section key={title}>
                <RuledTitle>{title}</RuledTitle>
                <p className="find-words">{words}</p>
              </section>
            ),
          )}
          <div className="buttons">
            {visit.calloutId !== null && (
              <PlaceLink place={{ to: `/callout/${visit.calloutId}` }} kind="plain">
                Open its callout
              </PlaceLink>
            )}
            <PlaceLink place={{ to: `/lift/${visit.liftId}` }} kind="quiet">
              {visit.liftTitle}
            </PlaceLink>
            <PlaceLink place={{ to: `/print/visit/${id}` }} kind="quiet">
              Visit sheet
            </PlaceLink>
          </div>
        </>
      )}
    </PreviewRead>
  );
}
