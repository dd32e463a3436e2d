import type { Calculator } from "#shared-lib/calculators/calculator.ts";
import type { UnitSystem } from "#shared-lib/quantities.ts";
import { printPage } from "../../shell-client.ts";
import { Button } from "../../ui/button.tsx";
import { LiftState } from "../../ui/lift-state.tsx";
import { PageTitle } from "../../ui/page-title.tsx";
import { SavedState } from "../../ui/saved-state.tsx";
import { useCommand } from "../../use-command.ts";
import { filledInWords } from "./filled-in.ts";
import type { BenchForm } from "./use-bench-form.ts";
import type { SaveResult } from "./use-save-result.ts";

interface BenchHeadProps {
  readonly calculator: Calculator;
  readonly form: BenchForm;
  readonly saving: SaveResult;
  readonly landingWords: string;
  readonly system: UnitSystem;
  readonly onUnits: () => void;
  readonly onOtherLift: () => void;
}

/** Which calculator, for which lift and landing, what it was filled in from, and what can be done with it. */
export function BenchHead(props: BenchHeadProps) {
  const { calculator, form, saving, landingWords, system, onUnits, onOtherLift } = props;
  const { lift } = form;
  const group = "Bench";
  useCommand({ name: "Save to the lift", keys: "Ctrl S", group, run: saving.save });
  useCommand({ name: "Other lift", keys: "L", group, run: onOtherLift });
  useCommand({ name: "Change the units", keys: "U", group, run: onUnits });
  useCommand({ name: "Print the record", keys: "P", group, run: printPage });
  const from = filledInWords(form.filled.from);
  const place = lift === undefined ? "No lift chosen" : `${lift.line.title}${landingWords}`;
  return (
    <header className="bench-head">
      <div className="spread">
        <PageTitle title={calculator.name} />
        <div className="buttons">
          <Button keys="U" onPress={onUnits}>
            {system === "metric" ? "Feet and pounds" : "Metric"}
          </Button>
          <Button keys="P" onPress={printPage}>
            Print
          </Button>
          <Button keys="L" onPress={onOtherLift}>
            {lift === undefined ? "Which lift" : "Other lift"}
          </Button>
          <Button kind="first" keys="Ctrl S" onPress={saving.save} pending={saving.pending}>
            Save to the lift
          </Button>
        </div>
      </div>
      <div className="spread">
        <p className="soft">
          {place}
          {from === "" ? "" : ` · ${from}`}
        </p>
        <div className="row label">
          {lift !== undefined && <LiftState lift={lift.line} />}
          <BenchSaved form={form} saving={saving} />
        </div>
      </div>
    </header>
  );
}

function BenchSaved({ form, saving }: Pick<BenchHeadProps, "form" | "saving">) {
  const { draft } = form;
  const typed = Object.keys(form.entries).length > 0;
  return (
    <div className="row" role="status">
      {saving.pending && <SavedState kind="saving" />}
      {!saving.pending && saving.savedAt !== null && <SavedState kind="saved" at={saving.savedAt} />}
      {!saving.pending && saving.savedAt === null && typed && (
        <>
          <SavedState
            kind="not saved yet"
            keptAt={draft.keptAt}
            {...(draft.found ? { before: "begun earlier" } : {})}
          />
          <Button kind="quiet" onPress={form.startAnew}>
            Start anew
          </Button>
        </>
      )}
    </div>
  );
}
