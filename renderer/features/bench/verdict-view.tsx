import type { Comparison, Result, Verdict } from "#shared-lib/calculators/result.ts";
import { type MarkKind, MarkShape } from "../../ui/mark.tsx";

export function markOf(holds: boolean | null): MarkKind {
  if (holds === null) return "unchecked";
  return holds ? "flush" : "stepped";
}

/** What is decided: the word, what it is, what to do; why; each number against its own limit; what follows until then. */
export function VerdictView({ result }: { readonly result: Result }) {
  const { verdict, comparisons, notes } = result;
  return (
    <section className="bench-verdict" aria-live="polite" aria-atomic="true" aria-label="Verdict">
      <VerdictWords verdict={verdict} />
      {verdict.because !== "" && <p className="bench-why">{verdict.because}</p>}
      {comparisons.length > 0 && (
        <ul className="bench-limits">
          {comparisons.map((comparison) => (
            <ComparisonLine key={comparison.key} comparison={comparison} />
          ))}
        </ul>
      )}
      <p className="bench-until label soft">{verdict.until}</p>
      {notes.length > 0 && (
        <ul className="bench-notes label soft">
          {notes.map((note) => (
            <li key={note}>{note}</li>
          ))}
        </ul>
      )}
    </section>
  );
}

function VerdictWords({ verdict }: { readonly verdict: Verdict }) {
  const pencil = verdict.holds === false ? "pencil" : "";
  return (
    <div className="verdict">
      <span className={pencil}>
        <MarkShape kind={markOf(verdict.holds)} />
      </span>
      <p>
        <b className={pencil}>{verdict.word}.</b> {verdict.sentence} {verdict.next}
      </p>
    </div>
  );
}

export function ComparisonLine({ comparison }: { readonly comparison: Comparison }) {
  const { holds, reading, word, rest } = comparison;
  const pencil = holds === false ? "pencil" : "";
  return (
    <li>
      <span className={pencil}>
        <MarkShape kind={markOf(holds)} />
      </span>
      <span>
        {reading}: <b className={pencil}>{word}</b>
        {word === "within" || word === "outside" ? " " : ", "}
        {rest}
      </span>
    </li>
  );
}

/** Every computed number, for who wants to follow the verdict. */
export function ComputedValues({ result }: { readonly result: Result }) {
  if (result.values.length === 0) return null;
  return (
    <dl className="bench-values" aria-label="Computed">
      {result.values.map((value) => (
        <div key={value.key}>
          <dt>{value.label}</dt>
          <dd>{value.shown}</dd>
        </div>
      ))}
    </dl>
  );
}
