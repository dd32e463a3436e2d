import { Link } from "@tanstack/react-router";
import "./cause.css";
import type { SimilarCallout } from "#shared-lib/contract/cause.ts";
import type { OutputOf } from "#shared-lib/contract/operations.ts";
import { formatDay } from "#shared-lib/format.ts";
import { type MarkKind, MarkShape } from "../../ui/mark.tsx";
import { MarkedText } from "../../ui/marked-text.tsx";
import { RuledTitle } from "../../ui/ruled-title.tsx";
import { useDebounced } from "../../use-debounced.ts";
import { useRead } from "../../use-read.ts";

interface SimilarFaultsProps {
  readonly text: string;
  readonly liftId: string | null;
  /** The callout in hand, which is not similar to itself. */
  readonly calloutId?: string;
}

const leastLetters = 3;

/** Similar past faults, and what ended them: found again as the words grow. */
export function SimilarFaults({ text, liftId, calloutId }: SimilarFaultsProps) {
  const asked = useDebounced(text.trim(), 250);
  const hasWords = asked.length >= leastLetters;
  const found = useRead(
    "cause.similar",
    { text: asked, liftId, calloutId: calloutId ?? null, limit: 3 },
    { enabled: hasWords, keepPrevious: true, entities: ["fault note", "recorded fix"] },
  );
  const { callouts = [], note = null } = found.value ?? {};
  return (
    <section className="similar-faults">
      <RuledTitle>Similar past faults, and what ended them</RuledTitle>
      {!hasWords && <p className="soft">They stand here as soon as the caller’s words are written.</p>}
      {hasWords && found.error !== undefined && <p className="soft">{found.error.message}</p>}
      {hasWords && found.value !== undefined && callouts.length === 0 && note === null && (
        <p className="soft">Nothing like it is on record yet.</p>
      )}
      {hasWords && (callouts.length > 0 || note !== null) && (
        <ol className="similar">
          {callouts.map((one) => (
            <SimilarLine key={`${one.calloutId} ${one.cause}`} similar={one} />
          ))}
          {note !== null && <NoteLine note={note} />}
        </ol>
      )}
    </section>
  );
}

function SimilarLine({ similar }: { readonly similar: SimilarCallout }) {
  const { calloutId, liftTitle, said, saidMarks, cause, fix, at, why } = similar;
  return (
    <li>
      <MarkShape kind="recorded fix" />
      <div className="similar-line">
        <Link to="/callout/$id" params={{ id: calloutId }}>
          <b>
            {liftTitle}: {sentence(cause)}
          </b>
        </Link>{" "}
        “<MarkedText text={said} ranges={saidMarks.map(([start, end]) => ({ start, end }))} />” {fix}{" "}
        <span className="soft wide-only-inline">
          {formatDay(at)}
          {why !== "" && `; ${why}`}
        </span>
      </div>
    </li>
  );
}

type SimilarNote = NonNullable<OutputOf<"cause.similar">["note"]>;

function NoteLine({ note }: { readonly note: SimilarNote }) {
  return (
    <li>
      <MarkShape kind={markOf(note.status)} />
      <div className="similar-line">
        <Link to="/note/$id" params={{ id: note.id }}>
          <b>{note.title}</b>
        </Link>{" "}
        {note.cause}
      </div>
    </li>
  );
}

const sentence = (words: string): string => (/[.!?]$/.test(words) ? words : `${words}.`);

const markOf = (status: SimilarNote["status"]): MarkKind => `note ${status}`;
