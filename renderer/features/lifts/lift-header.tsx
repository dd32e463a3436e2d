import { Link, useNavigate } from "@tanstack/react-router";
import type { Lift, LiftLine } from "#shared-lib/contract/lift.ts";
import type { Site } from "#shared-lib/contract/site.ts";
import { Button, buttonClass } from "../../ui/button.tsx";
import { Kbd } from "../../ui/kbd.tsx";
import { LiftState } from "../../ui/lift-state.tsx";
import { PageTitle } from "../../ui/page-title.tsx";
import { useCommand } from "../../use-command.ts";
import type { LiftDialog } from "./lift-actions.ts";
import { liftFactsLine, stateWords } from "./lift-words.ts";

interface LiftHeaderProps {
  readonly lift: Lift;
  readonly line: LiftLine;
  readonly site: Site;
}

export function LiftHeader({ lift, line, site }: LiftHeaderProps) {
  return (
    <header className="lift-head">
      <div className="lift-head-words">
        <PageTitle title={line.title}>
          <Link to="/site/$id" params={{ id: site.id }} className="lift-site">
            {site.name}
          </Link>
          , {lift.name}
        </PageTitle>
        <p className="soft label">{liftFactsLine(lift, line)}</p>
        <p className="row lift-state-line">
          <LiftState lift={line} short />
          <span className="soft">{stateWords(lift, new Date())}</span>
        </p>
      </div>
      <div className="buttons">
        <KeyedLink to="/desk" liftId={lift.id} keys="C" word="Log a callout" />
        <KeyedLink to="/checks" liftId={lift.id} keys="K" word="Start a check" />
      </div>
    </header>
  );
}

interface KeyedLinkProps {
  readonly to: "/desk" | "/checks" | "/find";
  readonly liftId: string;
  readonly keys: string;
  readonly word: string;
  readonly quiet?: boolean;
}

function KeyedLink({ to, liftId, keys, word, quiet = false }: KeyedLinkProps) {
  const navigate = useNavigate();
  useCommand({ name: word, keys, group: "Lift", run: () => void navigate({ to, search: { lift: liftId } }) });
  return (
    <Link to={to} search={{ lift: liftId }} className={buttonClass(quiet ? "quiet" : "plain")}>
      <span className="button-word">{word}</span>
      <span aria-hidden="true" className="wide-only">
        <Kbd keys={keys} />
      </span>
    </Link>
  );
}

interface LiftActsProps {
  readonly liftId: string;
  readonly onAsk: (dialog: LiftDialog) => void;
}

/** What else can be done on this lift. */
export function LiftActs({ liftId, onAsk }: LiftActsProps) {
  useCommand({ name: "Record a visit", keys: "V", group: "Lift", run: () => onAsk("visit") });
  return (
    <nav className="buttons lift-acts" aria-label="On this lift">
      <Button kind="quiet" onPress={() => onAsk("state")}>
        Change its state
      </Button>
      <Button kind="quiet" onPress={() => onAsk("visit")} keys="V">
        Record a visit
      </Button>
      <Button kind="quiet" onPress={() => onAsk("bridge")}>
        Enter a bridge
      </Button>
      <Button kind="quiet" onPress={() => onAsk("danger")}>
        Doors found bridged
      </Button>
      <KeyedLink to="/find" liftId={liftId} keys="S" word="Open in Find" quiet />
      <Link to="/print/lift/$id" params={{ id: liftId }} className={buttonClass("quiet")}>
        <span className="button-word">Take this lift with me</span>
      </Link>
    </nav>
  );
}
