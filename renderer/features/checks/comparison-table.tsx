import { formatDate } from "#shared-lib/format.ts";
import { Mark } from "../../ui/mark.tsx";
import { Table, type TableColumn } from "../../ui/table.tsx";
import type { CheckStep } from "./check-types.ts";
import { changeOf } from "./compare-steps.ts";
import { expectedWords, foundWords, placeWords, verdictMarks, verdictWords } from "./step-words.ts";

interface ComparisonTableProps {
  readonly steps: readonly CheckStep[];
  /** For a finished check: with what was expected, and the notes. */
  readonly whole?: boolean;
}

/** Step, this time, previous time with the same plan on this lift, and what changed in words. */
export function ComparisonTable({ steps, whole = false }: ComparisonTableProps) {
  return (
    <div className="scroll-frame">
      <Table
        label="Steps compared with the previous time"
        columns={whole ? [stepColumn, expectedColumn, ...timeColumns] : [stepColumn, ...timeColumns]}
        rows={steps}
        rowKey={(step) => step.key}
      />
    </div>
  );
}

const stepColumn: TableColumn<CheckStep> = {
  id: "step",
  head: "Step",
  rowHead: true,
  cell: (step) => (
    <>
      <span className="check-row-place">{placeWords(step)}</span>
      {step.title}
      {step.note !== "" && <span className="check-row-note">Note: {step.note}</span>}
    </>
  ),
};

const expectedColumn: TableColumn<CheckStep> = {
  id: "expected",
  head: "Expected",
  wideOnly: true,
  cell: (step) => expectedWords(step.expected),
};

const timeColumns: readonly TableColumn<CheckStep>[] = [
  {
    id: "now",
    head: "This time",
    cell: (step) => <Finding verdict={step.verdict} found={foundWords(step.found, step.expected)} pencil />,
  },
  {
    id: "previous",
    head: "Previous time",
    cell: ({ previous, expected }) =>
      previous === null ? (
        <span className="soft">never checked</span>
      ) : (
        <>
          <Finding verdict={previous.verdict} found={foundWords(previous.found, expected)} />
          <span className="check-row-note">{formatDate(previous.at)}</span>
        </>
      ),
  },
  {
    id: "changed",
    head: "Changed",
    cell: (step) => {
      const { words, worse } = changeOf(step);
      return worse ? <span className="pencil strong">{words}</span> : words;
    },
  },
];

interface FindingProps {
  readonly verdict: CheckStep["verdict"];
  readonly found: string;
  readonly pencil?: boolean;
}

function Finding({ verdict, found, pencil = false }: FindingProps) {
  return (
    <>
      <Mark
        kind={verdictMarks[verdict]}
        word={verdictWords[verdict]}
        pencil={pencil && verdict === "failed"}
        strong={verdict === "failed"}
      />
      <span className="check-row-found">{found}</span>
    </>
  );
}
