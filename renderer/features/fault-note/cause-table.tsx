import "./fault-note.css";
import { formatFraction } from "#shared-lib/format.ts";
import type { FoundNote } from "./note-words.ts";

interface CauseTableProps {
  readonly found: FoundNote;
  /** With fixes, cautions and sources; left out: only how to tell. */
  readonly full?: boolean;
}

/** Causes in the order of the note, each with how many of the proving callouts it ended. */
export function CauseTable({ found, full = false }: CauseTableProps) {
  const { note, counts, callouts } = found;
  const counted = new Map(counts.map(({ causeKey, callouts: ended }) => [causeKey, ended]));
  return (
    <table className="table note-causes">
      <thead>
        <tr>
          <th scope="col">
            <span className="seen-by-reader-only">Place</span>
          </th>
          <th scope="col">{full ? "Cause, how to tell, fix" : "Cause and how to tell"}</th>
          {callouts > 0 && (
            <th scope="col" className="number">
              Ended it
            </th>
          )}
        </tr>
      </thead>
      <tbody>
        {note.causes.map((cause, index) => (
          <tr key={cause.key}>
            <td className="note-cause-number">{index + 1}</td>
            <td>
              <b>{cause.title}</b>
              {cause.tell !== "" && <p className="soft">{cause.tell}</p>}
              {full && cause.fix !== "" && (
                <p>
                  <span className="note-lead">Fix</span> {cause.fix}
                </p>
              )}
              {full && cause.caution !== undefined && cause.caution !== "" && (
                <p>
                  <span className="note-lead">Caution</span> {cause.caution}
                </p>
              )}
              {full && cause.source !== undefined && cause.source !== "" && (
                <p className="soft label">{cause.source}</p>
              )}
            </td>
            {callouts > 0 && (
              <td className="number strong">
                {formatFraction(counted.get(cause.key) ?? 0, callouts)}
                <CountBar part={counted.get(cause.key) ?? 0} whole={callouts} />
              </td>
            )}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

const barWidth = 84;

/** The fraction on a dimension line; the words beside it say the same. */
function CountBar({ part, whole }: { readonly part: number; readonly whole: number }) {
  const to = 6 + (barWidth * Math.min(part, whole)) / Math.max(1, whole);
  return (
    <svg className="note-count-bar" width="96" height="14" viewBox="0 0 96 14" aria-hidden="true">
      <path className="note-count-whole" d={`M6 7H${6 + barWidth}M6 4V10M${6 + barWidth} 4V10`} />
      {part > 0 && <path className="note-count-part" d={`M6 7H${to}`} />}
    </svg>
  );
}
