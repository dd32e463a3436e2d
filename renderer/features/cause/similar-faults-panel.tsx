import { Link } from "@tanstack/react-router";
import type { OutputOf } from "#shared-lib/contract/operations.ts";
import { type MarkKind, MarkShape } from "../../ui/mark.tsx";
import { MarkedText } from "../../ui/marked-text.tsx";
import { RuledTitle } from "../../ui/ruled-title.tsx";
import { useDebounced } from "../../use-debounced.ts";
import { useRead } from "../../use-read.ts";

interface SimilarFaultsProps {
  readonly text: string;
  readonly liftId: string | null;
}

const leastLetters = 3;

/** Similar past faults, and what ended them: found again as the words grow. */
export function SimilarFaults({ text, liftId }: SimilarFaultsProps) {
  const asked = useDebounced(text.trim(), 250);
  const hasWords = asked.length >= leastLetters;
  const found = useRead(
    "search.similar",
    { text: asked, liftId, limit: 3 },
    { enabled: hasWords, keepPrevious: true, entities: ["fault note", "recorded fix"] },
  );
  const similar = found.value?.similar ?? [];
  return (
    <section>
      <RuledTitle>Similar past faults, and what ended them</RuledTitle>
      {!hasWords && <p className="soft">They stand here as soon as the caller’s words are written.</p>}
      {hasWords && found.error !== undefined && <p className="soft">{found.error.message}</p>}
      {hasWords && found.value !== undefined && similar.length === 0 && (
        <p className="soft">Nothing like it is on record yet.</p>
      )}
      <ol className="similar">
        {hasWords && similar.map((one) => <Similar key={`${one.kind} ${one.id}`} similar={one} />)}
      </ol>
    </section>
  );
}

type SimilarFault = OutputOf<"search.similar">["similar"][number];

function Similar({ similar }: { readonly similar: SimilarFault }) {
  const title = (
    <b>
      <MarkedText text={similar.title} ranges={similar.titleMarks.map(([start, end]) => ({ start, end }))} />
    </b>
  );
  return (
    <li>
      <MarkShape kind={markOf(similar)} />
      <div>
        {similar.kind === "note" ? (
          <Link to="/note/$id" params={{ id: similar.id }}>
            {title}
          </Link>
        ) : similar.calloutId === null ? (
          title
        ) : (
          <Link to="/callout/$id" params={{ id: similar.calloutId }}>
            {title}
          </Link>
        )}
        <span className="similar-end">{similar.endedBy}</span>
        <span className="soft wide-only">{similar.why}</span>
      </div>
    </li>
  );
}

function markOf(similar: SimilarFault): MarkKind {
  if (similar.kind === "fix") return "recorded fix";
  return similar.status === "confirmed"
    ? "note confirmed"
    : similar.status === "withdrawn"
      ? "note withdrawn"
      : "note draft";
}
