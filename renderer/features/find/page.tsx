import { type RefObject, useCallback, useEffect, useMemo, useRef } from "react";
import type { LiftLine } from "#shared-lib/contract/lift.ts";
import { Button } from "../../ui/button.tsx";
import { ErrorNote } from "../../ui/error-note.tsx";
import { LiftState } from "../../ui/lift-state.tsx";
import { PageTitle } from "../../ui/page-title.tsx";
import { useCommand } from "../../use-command.ts";
import { useRead } from "../../use-read.ts";
import { SaveList } from "../export/save-list-panel.tsx";
import { AllNotesHead } from "./all-notes.tsx";
import "./find.css";
import { isFiltered, withoutFilters } from "./find-address.ts";
import { FindFilters } from "./find-filters.tsx";
import { NothingFound } from "./nothing-found.tsx";
import { PlaceLink } from "./place-link.tsx";
import { Preview } from "./preview.tsx";
import { ReadAsLine } from "./read-as-line.tsx";
import type { ResultItem } from "./result-groups.ts";
import { lineId, listId, ResultList } from "./result-list.tsx";
import { SearchBox } from "./search-box.tsx";
import { type FindQuestion, longestText, searchInput, useFindQuestion } from "./use-find.ts";
import { useOpenResult } from "./use-open-result.ts";
import { type Results, useResults } from "./use-results.ts";

/** One search box over everything, what it found, and the chosen result with the way on. */
export function FindPage() {
  const question = useFindQuestion();
  const { text, address, setText, setAddress } = question;
  const results = useResults(question);
  const { open, openChosen, openCalculator } = useOpenResult(question, results);
  const lifts = useRead("lift.list", {}, { entities: ["lift", "site", "bridge", "danger", "callout"] });
  const liftById = useMemo(() => new Map(lifts.value?.lifts.map((lift) => [lift.id, lift])), [lifts.value]);
  const contextLift = address.lift === null ? undefined : liftById.get(address.lift);
  const box = useRef<HTMLInputElement>(null);
  const { chosen } = results;
  useCommand({ name: "Open its calculator", keys: "Ctrl Enter", group: "Find", run: openCalculator });
  useCommand({ name: "Back to the search box", keys: "/", group: "Find", run: () => box.current?.focus() });
  const clear = () => {
    setText("");
    setAddress({ q: "", keep: [] });
    box.current?.focus();
  };
  return (
    <div className="find">
      <div className="seen-by-reader-only">
        <PageTitle title={text.trim() === "" ? "Find" : `Find: ${text.slice(0, 60)}`}>Find</PageTitle>
      </div>
      <div className="find-bar">
        <SearchBox
          text={text}
          onText={setText}
          onClear={clear}
          onStep={results.step}
          onOpen={openChosen}
          lists={results.groups.map(({ key }) => listId(key))}
          chosenLine={chosen === undefined ? undefined : lineId(chosen.key)}
          inputRef={box}
        />
        <FindFilters lifts={lifts.value?.lifts ?? []} address={address} onChange={setAddress} />
      </div>
      <UnderBox question={question} results={results} contextLift={contextLift} />
      <div className="find-columns">
        <FoundResults question={question} results={results} lifts={liftById} box={box} onOpen={open} />
        <section className="find-preview" aria-label="Chosen result">
          {chosen === undefined && !results.searched && <HowToFind />}
          {chosen !== undefined && (
            <Preview
              key={chosen.key}
              item={chosen}
              contextLift={contextLift}
              onUseLift={(lift) => setAddress({ lift })}
            />
          )}
        </section>
      </div>
    </div>
  );
}

interface PartProps {
  readonly question: FindQuestion;
  readonly results: Results;
}

/** The lift that is searched for, and what else the words were read as. */
function UnderBox({
  question,
  results,
  contextLift,
}: PartProps & { readonly contextLift: LiftLine | undefined }) {
  const { text, address, setAddress } = question;
  return (
    <div className="find-under">
      {contextLift !== undefined && (
        <ContextLift lift={contextLift} only={address.only} onOnly={(only) => setAddress({ only })} />
      )}
      {results.answer !== undefined && (
        <ReadAsLine
          answer={results.answer}
          kept={address.keep}
          onKeep={(word) => setAddress({ keep: [...address.keep, word] })}
          onCorrectAgain={(word) => setAddress({ keep: address.keep.filter((one) => one !== word) })}
          shortened={text.length > longestText}
        />
      )}
    </div>
  );
}

interface FoundResultsProps extends PartProps {
  readonly lifts: ReadonlyMap<string, LiftLine>;
  readonly box: RefObject<HTMLInputElement | null>;
  readonly onOpen: (item: ResultItem) => void;
}

function FoundResults({ question, results, lifts, box, onOpen }: FoundResultsProps) {
  const { text, address, setAddress } = question;
  const { answer, read, searched, choose } = results;
  const chooseAndStay = useCallback(
    (key: string) => {
      choose(key);
      box.current?.focus({ preventScroll: true });
    },
    [choose, box],
  );
  // The lines are drawn again only when they change, so what they call stays the same function.
  const newestOpen = useRef(onOpen);
  useEffect(() => {
    newestOpen.current = onOpen;
  });
  const openLine = useCallback((item: ResultItem) => newestOpen.current(item), []);
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a part that scrolls can be reached by key.
    <section className="find-results" aria-label="Results" tabIndex={0}>
      {read.error !== undefined && <ErrorNote error={read.error} onRetry={read.reload} />}
      {!searched && <AllNotesHead address={address} count={results.count} onChange={setAddress} />}
      {answer !== undefined && results.groups.length > 0 && (
        <SaveList list="search results" input={searchInput(question)} />
      )}
      {answer?.advice != null && (
        <NothingFound
          advice={answer.advice}
          words={text}
          filtered={isFiltered(address)}
          onWithoutFilters={() => setAddress(withoutFilters(address))}
        />
      )}
      <ResultList
        groups={results.groups}
        chosenKey={results.chosen?.key ?? null}
        onChoose={chooseAndStay}
        onOpen={openLine}
        lifts={lifts}
        onUnfold={results.unfold}
      />
      <FoundCount results={results} />
    </section>
  );
}

/** Told to a reader, who does not see the lists grow. */
function FoundCount({ results }: { readonly results: Results }) {
  const total = results.answer?.groups.reduce((sum, group) => sum + group.total, 0);
  return (
    <p className="seen-by-reader-only" role="status">
      {total !== undefined && results.current && `${total} results`}
    </p>
  );
}

interface ContextLiftProps {
  readonly lift: LiftLine;
  readonly only: boolean;
  readonly onOnly: (only: boolean) => void;
}

function ContextLift({ lift, only, onOnly }: ContextLiftProps) {
  return (
    <div className="find-lift">
      <span>
        {only && "Only "}
        <PlaceLink place={{ to: `/lift/${lift.id}` }}>{lift.title}</PlaceLink>
        {!only && lift.controllerFamily !== "" && ` and controller family ${lift.controllerFamily}`}
        {!only && " first"}
      </span>
      <LiftState lift={lift} short />
      <Button kind="quiet" onPress={() => onOnly(!only)}>
        {only ? "Search every lift" : "Only this lift"}
      </Button>
    </div>
  );
}

function HowToFind() {
  return (
    <div className="stack">
      <h2>What to type</h2>
      <p>
        What the caller says: “stops too low at 2”, “doors keep reopening”. A part of a lift’s name, of its
        street or the number on its plate. What a display shows.
      </p>
      <p className="soft">
        Choose the lift you stand at: what fits it and its controller family comes first, and calculators open
        filled in from it.
      </p>
    </div>
  );
}
