import type { CauseRanking, RankedCause } from "#shared-lib/contract/cause.ts";
import { countWords, standingWords } from "./cause-words.ts";

/** All causes of the note, most likely first, with the counts behind them. None is hidden. */
export function RankedCauses({ ranking }: { readonly ranking: CauseRanking }) {
  const counted = ranking.evidence.callouts > 0;
  return (
    <table className="table cause-table">
      <thead>
        <tr>
          <th scope="col">
            <span className="seen-by-reader-only">Rank</span>
          </th>
          <th scope="col">Cause and how to tell</th>
          <th scope="col">Now</th>
          {counted && (
            <th scope="col" className="number">
              Ended it
            </th>
          )}
        </tr>
      </thead>
      <tbody>
        {ranking.causes.map((cause, index) => (
          <CauseRow key={cause.key} cause={cause} ranking={ranking} rank={index + 1} counted={counted} />
        ))}
      </tbody>
    </table>
  );
}

interface CauseRowProps {
  readonly cause: RankedCause;
  readonly ranking: CauseRanking;
  readonly rank: number;
  readonly counted: boolean;
}

function CauseRow({ cause, ranking, rank, counted }: CauseRowProps) {
  const isOut = cause.ruledOutBy.length > 0;
  return (
    <tr>
      <td className="cause-rank">{rank}</td>
      <td>
        {isOut ? <s>{cause.title}</s> : <b>{cause.title}</b>}
        {cause.tell !== "" && !isOut && <p className="soft label">{cause.tell}</p>}
        {cause.ruledOutBy.map((words) => (
          <p key={words} className="soft label">
            Ruled out by {words}
          </p>
        ))}
        {cause.provedBy.map((words) => (
          <p key={words} className="label">
            Proved by {words}
          </p>
        ))}
      </td>
      <td className="cause-standing">
        {standingWords(cause, ranking)}
        {!ranking.evidence.thin && ranking.contradiction === null && <Share of={cause.probability} />}
      </td>
      {counted && (
        <td className="number strong">
          {countWords(cause, ranking)}
          {cause.onLift > 0 && <p className="soft label cause-here">{cause.onLift} on this lift</p>}
        </td>
      )}
    </tr>
  );
}

const lineWidth = 84;

/** The probability on a dimension line; the words beside it say the same. */
function Share({ of }: { readonly of: number }) {
  return (
    <svg className="cause-share" width="96" height="14" viewBox="0 0 96 14" aria-hidden="true">
      <path className="cause-share-whole" d={`M6 7H${6 + lineWidth}M6 4V10M${6 + lineWidth} 4V10`} />
      {of > 0 && <path className="cause-share-part" d={`M6 7H${(6 + lineWidth * of).toFixed(1)}`} />}
    </svg>
  );
}
