import { Link } from "@tanstack/react-router";
import { useMemo, useState } from "react";
import { formatDate } from "#shared-lib/format.ts";
import { repeatWindowDays } from "#shared-lib/words.ts";
import { printPage } from "../../shell-client.ts";
import { Button, buttonClass } from "../../ui/button.tsx";
import { EmptyState } from "../../ui/empty-state.tsx";
import { PageTitle } from "../../ui/page-title.tsx";
import { useCommand } from "../../use-command.ts";
import { useProgram } from "../../use-program.ts";
import { useRead } from "../../use-read.ts";
import { attentionItems } from "./attention.ts";
import { AttentionList } from "./attention-list.tsx";
import { FilterDialog } from "./filter-dialog.tsx";
import { GroupsPart } from "./groups-part.tsx";
import { NotesUsedPart, WithoutCausePart } from "./knowledge-parts.tsx";
import { LiftsPart } from "./lifts-part.tsx";
import { RepeatsPart } from "./repeats-part.tsx";
import "./review.css";
import { ReviewPart } from "./review-part.tsx";
import { periodWords } from "./review-words.ts";
import { type Review, useReview } from "./use-review.ts";

/** What keeps coming back: first what needs a person, then the counts it is told from. */
export function ReviewPage() {
  const review = useReview();
  const [changing, setChanging] = useState(false);
  const { sites } = useRead("site.list", {}, { entities: ["site", "lift"] }).value ?? { sites: [] };
  const change = () => setChanging(true);
  useCommand({ name: "Change time, site or fault group", keys: "F", group: "Review", run: change });
  useCommand({ name: "Print the review", keys: "P", group: "Review", run: printPage });
  const { attention, open, repeats, address, now } = review;
  const siteName = sites.find(({ id }) => id === address.site)?.name;
  return (
    <div className="review">
      <ReviewHead review={review} siteName={siteName} onChange={change} />
      <ReviewPart read={attention}>
        {(found) => (
          <ReviewPart read={open}>
            {({ callouts }) => <AttentionList items={attentionItems(found, callouts, now)} />}
          </ReviewPart>
        )}
      </ReviewPart>
      <ReviewPart read={repeats}>
        {({ firstReceivedAt }) =>
          firstReceivedAt === null ? (
            <NothingYet ofSite={address.site !== null} onChange={change} />
          ) : (
            <ReviewSheet review={review} />
          )
        }
      </ReviewPart>
      {changing && (
        <FilterDialog
          address={address}
          days={review.days}
          sites={sites}
          onClose={() => setChanging(false)}
          onTake={(next) => {
            setChanging(false);
            review.setAddress(next);
          }}
        />
      )}
    </div>
  );
}

interface HeadProps {
  readonly review: Review;
  readonly siteName: string | undefined;
  readonly onChange: () => void;
}

function ReviewHead({ review, siteName, onChange }: HeadProps) {
  const { device, person } = useProgram();
  const { address, days, now } = review;
  const site = address.site === null ? "all sites" : (siteName ?? "site not found");
  const issued = [device.company?.name, formatDate(now), person?.name].filter(Boolean).join(", ");
  return (
    <header className="spread review-head">
      <PageTitle title="Review" />
      <div className="review-looks-at">
        <p className="soft">
          {[
            periodWords(days),
            site,
            address.group ?? "all fault groups",
            `repeat window ${repeatWindowDays}\u00a0days`,
          ].join(" · ")}
        </p>
        <Button kind="quiet" keys="F" onPress={onChange} label="Change time, site or fault group">
          Change
        </Button>
        <Button kind="quiet" keys="P" onPress={printPage}>
          Print
        </Button>
      </div>
      <p className="review-issued">{issued}</p>
    </header>
  );
}

/** Two by two; one column where it is narrow. */
function ReviewSheet({ review }: { readonly review: Review }) {
  const { repeats, counts, withoutCause, notesUsed } = review;
  const period = periodWords(review.days);
  const groups = counts.value?.groups;
  const received = useMemo(
    () =>
      groups === undefined
        ? null
        : {
            now: groups.flatMap(({ calloutIds }) => calloutIds),
            before: groups.flatMap(({ yearBeforeIds }) => yearBeforeIds),
          },
    [groups],
  );
  return (
    <div className="review-grid">
      <div>
        <ReviewPart read={repeats}>
          {(found) => <RepeatsPart review={review} repeats={found} received={received} />}
        </ReviewPart>
      </div>
      <div>
        <ReviewPart read={counts}>{(found) => <LiftsPart review={review} counts={found} />}</ReviewPart>
      </div>
      <div>
        <ReviewPart read={counts}>{(found) => <GroupsPart review={review} counts={found} />}</ReviewPart>
      </div>
      <div className="review-knowledge">
        <ReviewPart read={withoutCause}>
          {(found) => <WithoutCausePart period={period} asked={review.period} found={found} />}
        </ReviewPart>
        <ReviewPart read={notesUsed}>
          {({ notes }) => <NotesUsedPart period={period} asked={review.period} notes={notes} />}
        </ReviewPart>
      </div>
    </div>
  );
}

function NothingYet({ ofSite, onChange }: { readonly ofSite: boolean; readonly onChange: () => void }) {
  if (ofSite) {
    return (
      <EmptyState action={<Button onPress={onChange}>Look at another site</Button>}>
        No callout of this site is recorded yet. What keeps coming back there is shown from its second callout
        on.
      </EmptyState>
    );
  }
  return (
    <EmptyState
      action={
        <Link to="/desk" className={buttonClass("first")}>
          <span className="button-word">Log the first callout</span>
        </Link>
      }
    >
      Here stand the repeats, the lifts and fault groups with the most callouts and what was closed without a
      cause, as soon as callouts are logged.
    </EmptyState>
  );
}
