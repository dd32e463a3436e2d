import { Link } from "@tanstack/react-router";
import { useMemo, useRef, useState } from "react";
import { calculatorById, calculators } from "#shared-lib/calculators/registry.ts";
import type { OutputOf } from "#shared-lib/contract/operations.ts";
import { formatSince } from "#shared-lib/format.ts";
import { EmptyState } from "../../ui/empty-state.tsx";
import { ErrorNote } from "../../ui/error-note.tsx";
import { Mark, MarkShape } from "../../ui/mark.tsx";
import { PageTitle } from "../../ui/page-title.tsx";
import { RuledTitle } from "../../ui/ruled-title.tsx";
import { TextField } from "../../ui/text-field.tsx";
import { useCommand } from "../../use-command.ts";
import { useRead } from "../../use-read.ts";
import { searchOfPlace } from "./bench-place.ts";
import { calculatorsFor } from "./calculators-for.ts";
import { markOf } from "./verdict-view.tsx";
import "./bench.css";

/** Every calculator, by what it is for and what people say when they need it; what was saved last. */
export function BenchPage() {
  const [text, setText] = useState("");
  const box = useRef<HTMLInputElement>(null);
  useCommand({ name: "Search calculators", keys: "/", group: "Bench", run: () => box.current?.focus() });
  const asked = text.trim();
  const found = useRead(
    "search.find",
    { text: asked, kinds: ["calculator"], typing: true, limitPerKind: 50 },
    { enabled: asked !== "", entities: [], keepPrevious: true },
  );
  const shown = useMemo(() => calculatorsFor(asked, found.value), [asked, found.value]);
  return (
    <>
      <PageTitle title="Bench" />
      <div className="bench-search">
        <TextField
          label="What is to be worked out"
          hint="as you would say it"
          value={text}
          onChange={setText}
          type="search"
          inputRef={box}
        />
      </div>
      <ErrorNote error={found.error} />
      <div className="bench-list">
        <section>
          <RuledTitle
            count={
              shown.length === calculators.length
                ? calculators.length
                : `${shown.length} of ${calculators.length}`
            }
          >
            Calculators
          </RuledTitle>
          {shown.length === 0 && !found.loading ? (
            <EmptyState>
              No calculator has these words. Find also reads fault notes, fixes and callouts.
            </EmptyState>
          ) : (
            <ul aria-label="Calculators">
              {shown.map((line) => (
                <li key={line.id}>
                  <CalculatorLine {...line} />
                </li>
              ))}
            </ul>
          )}
        </section>
        <Recent />
      </div>
    </>
  );
}

function CalculatorLine({ id, why }: { readonly id: string; readonly why: string }) {
  const calculator = calculatorById(id);
  if (calculator === undefined) return null;
  return (
    <Link to="/bench/$calculator" params={{ calculator: id }} className="bench-choice">
      <MarkShape kind="calculator" />
      <span className="bench-choice-name">{calculator.name}</span>
      <span>{calculator.purpose}</span>
      <span className="label soft">
        {why === "" ? `When: ${calculator.words.slice(0, 4).join("; ")}` : why}
      </span>
    </Link>
  );
}

type RecentCalculation = OutputOf<"calculation.recent">["calculations"][number];

function Recent() {
  const recent = useRead("calculation.recent", { limit: 10 }, { entities: ["calculation", "lift", "site"] });
  const saved = recent.value?.calculations ?? [];
  return (
    <section>
      <RuledTitle>Saved last</RuledTitle>
      <ErrorNote error={recent.error} onRetry={recent.reload} />
      {recent.value !== undefined && saved.length === 0 && (
        <p className="soft">Results saved on a lift are listed here.</p>
      )}
      <ul aria-label="Saved last">
        {saved.map((calculation) => (
          <li key={calculation.id}>
            <RecentLine calculation={calculation} />
          </li>
        ))}
      </ul>
    </section>
  );
}

/** By the word alone the mark cannot be told; the sentence beside it says it all. */
function RecentLine({ calculation }: { readonly calculation: RecentCalculation }) {
  const { calculatorId, liftId, landingId, landingMarking, verdictWord } = calculation;
  const landing = landingMarking === null ? "" : `, landing ${landingMarking}`;
  const holds = verdictWord === "Within" ? true : verdictWord === "Not enough" ? null : false;
  return (
    <Link
      to="/bench/$calculator"
      params={{ calculator: calculatorId }}
      search={searchOfPlace({ lift: liftId, landing: landingId, note: null })}
      className="bench-choice"
    >
      <MarkShape kind="calculator" />
      <span className="strong">{`${calculation.liftTitle}${landing}`}</span>
      <span>
        <Mark kind={markOf(holds)} word={verdictWord} pencil={holds === false} strong />{" "}
        {calculation.verdictSentence}
      </span>
      <span className="label soft">
        {`${calculation.calculatorName} · ${formatSince(calculation.at, new Date())}, ${calculation.by.name}`}
      </span>
    </Link>
  );
}
