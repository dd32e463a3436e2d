import { Link, useNavigate } from "@tanstack/react-router";
import { useState } from "react";
import { formatDate } from "#shared-lib/format.ts";
import { repeatWindowDays } from "#shared-lib/words.ts";
import { ChartFrame } from "../../ui/chart-frame.tsx";
import { RepeatArches } from "../../ui/drawings/repeat-arches.tsx";
import { RuledTitle } from "../../ui/ruled-title.tsx";
import { Table, type TableColumn } from "../../ui/table.tsx";
import { SaveList } from "../export/save-list-panel.tsx";
import { chainTitle } from "./attention.ts";
import { CalloutsLink } from "./callouts-link.tsx";
import { calloutsPlace } from "./callouts-place.ts";
import { fewRows, MoreButton } from "./few-rows.tsx";
import {
  type Chain,
  chainKey,
  missingWords,
  orderedChains,
  periodWords,
  type Repeats,
  repeatsTitle,
} from "./review-words.ts";
import { timeTicks } from "./time-ticks.ts";
import type { Review } from "./use-review.ts";

interface RepeatsPartProps {
  readonly review: Review;
  readonly repeats: Repeats;
  /** Ids of every callout received in the period and a year before; null while they are not known. */
  readonly received: { readonly now: readonly string[]; readonly before: readonly string[] } | null;
}

/** What came back: chains of repeats as arches, and in the caption the same numbers with their callouts. */
export function RepeatsPart({ review, repeats, received }: RepeatsPartProps) {
  const [all, setAll] = useState(false);
  const urgent = new Set((review.attention.value?.chains ?? []).map(chainKey));
  const chains = orderedChains(repeats.chains, urgent);
  const title = repeatsTitle(repeats, repeatWindowDays);
  const caption = <RepeatsCaption review={review} repeats={repeats} received={received} />;
  if (chains.length === 0) {
    return (
      <section>
        <RuledTitle>{title}</RuledTitle>
        <div className="chart-caption">{caption}</div>
      </section>
    );
  }
  return (
    <ChartFrame
      title={title}
      caption={caption}
      fileName={`repeats-${review.days.from}-${review.days.until}`}
      acts={<SaveList list="repeats" input={review.period} />}
      table={<ChainTable chains={chains} />}
    >
      <ChainPicture review={review} chains={all ? chains : chains.slice(0, fewRows)} urgent={urgent} />
      {chains.length > fewRows && (
        <MoreButton all={all} onAll={setAll} words={`All ${chains.length} chains`} />
      )}
    </ChartFrame>
  );
}

function ChainPicture(props: {
  readonly review: Review;
  readonly chains: readonly Chain[];
  readonly urgent: ReadonlySet<string>;
}) {
  const { review, chains, urgent } = props;
  const navigate = useNavigate();
  const from = Date.parse(review.moments.from);
  const to = Date.parse(review.moments.until);
  return (
    <RepeatArches
      label={`Chains of repeats within ${repeatWindowDays} days, ${periodWords(review.days)}`}
      from={from}
      to={to}
      ticks={timeTicks(from, to)}
      rows={chains.map((chain) => ({
        id: chainKey(chain),
        title: chain.liftTitle,
        note: chain.group,
        times: chain.callouts.map(({ receivedAt }) => Date.parse(receivedAt)),
        standsOut: urgent.has(chainKey(chain)),
      }))}
      onChoose={(key) => {
        const chain = chains.find((one) => chainKey(one) === key);
        if (chain !== undefined) void navigate(calloutsPlace(idsOf(chain), chainTitle(chain)));
      }}
    />
  );
}

function RepeatsCaption({ review, repeats, received }: RepeatsPartProps) {
  const { yearBefore, days } = review;
  const period = periodWords(days);
  return (
    <>
      {repeats.callouts > 0 && (
        <p>
          <CalloutsLink ids={repeats.repeatIds} title={`Repeats within ${repeatWindowDays} days, ${period}`}>
            {repeats.repeats}
          </CalloutsLink>{" "}
          of{" "}
          <CalloutsLink ids={received?.now ?? []} title={`Callouts received, ${period}`}>
            {repeats.callouts}
          </CalloutsLink>{" "}
          callouts came back within {repeatWindowDays} days
          {yearBefore.kind !== "none" && (
            <>
              ; the year before{" "}
              <CalloutsLink
                ids={repeats.repeatIdsYearBefore}
                title={`Repeats within ${repeatWindowDays} days, the year before ${period}`}
              >
                {repeats.repeatsYearBefore}
              </CalloutsLink>{" "}
              of{" "}
              <CalloutsLink
                ids={received?.before ?? []}
                title={`Callouts received, the year before ${period}`}
              >
                {repeats.calloutsYearBefore}
              </CalloutsLink>
            </>
          )}
          . On the same lift, whatever the fault group:{" "}
          <CalloutsLink
            ids={repeats.sameLift.calloutIds}
            title={`Same lift again within ${repeatWindowDays} days, ${period}`}
          >
            {repeats.sameLift.repeats}
          </CalloutsLink>
          . {missingWords(yearBefore)}
        </p>
      )}
      {repeats.callouts < 2 && <p>A repeat takes two callouts of one lift and one fault group.</p>}
      <p>
        A chain: same lift and fault group, each within {repeatWindowDays} days of the last; number of
        callouts at the right, also those before this time. Red pencil: it still goes on. “Not yet known” is
        never a repeat by group.
      </p>
    </>
  );
}

const columns: readonly TableColumn<Chain>[] = [
  {
    id: "lift",
    head: "Lift",
    rowHead: true,
    sortBy: ({ liftTitle }) => liftTitle,
    sortWords: { rising: "A first", falling: "Z first" },
    cell: ({ liftId, liftTitle }) => (
      <Link to="/lift/$id" params={{ id: liftId }} className="review-name">
        {liftTitle}
      </Link>
    ),
  },
  { id: "group", head: "Fault group", sortBy: ({ group }) => group, cell: ({ group }) => group },
  {
    id: "last",
    head: "Last one",
    sortBy: ({ callouts }) => callouts.at(-1)?.receivedAt ?? "",
    sortWords: { rising: "oldest first", falling: "newest first" },
    cell: ({ callouts }) => {
      const last = callouts.at(-1);
      return last === undefined ? "" : formatDate(last.receivedAt);
    },
  },
  {
    id: "callouts",
    head: "Callouts",
    number: true,
    sortBy: ({ callouts }) => callouts.length,
    sortWords: { rising: "fewest first", falling: "most first" },
    cell: (chain) => (
      <CalloutsLink ids={idsOf(chain)} title={chainTitle(chain)} inCell>
        {chain.callouts.length}
      </CalloutsLink>
    ),
  },
];

function ChainTable({ chains }: { readonly chains: readonly Chain[] }) {
  return (
    <div className="review-rows">
      <Table
        label="Chains of repeats"
        columns={columns}
        rows={chains}
        rowKey={chainKey}
        startSort={{ column: "callouts", falling: true }}
      />
    </div>
  );
}

function idsOf({ callouts }: Chain): string[] {
  return callouts.map(({ id }) => id);
}
