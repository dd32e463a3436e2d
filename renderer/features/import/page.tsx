import { FileTrigger } from "react-aria-components";
import { Button } from "../../ui/button.tsx";
import { ErrorNote } from "../../ui/error-note.tsx";
import { PageTitle } from "../../ui/page-title.tsx";
import { RuledTitle } from "../../ui/ruled-title.tsx";
import { CheckPart } from "./check-part.tsx";
import { FoundPart } from "./found-part.tsx";
import { count } from "./import-words.ts";
import { ImportsPart } from "./imports-part.tsx";
import { type Finished, useTableImport } from "./use-table-import.ts";
import "./import.css";

/** A company's records from before Sillbook, from a CSV or XLSX table. */
export function ImportPage() {
  const work = useTableImport();
  const { chosen, progress, finished, wasCancelled, error, choose, cancel } = work;
  return (
    <>
      <PageTitle title="Bring in old records" />
      <div className="import-page stack">
        <section className="stack">
          <RuledTitle>The table</RuledTitle>
          <p>
            A CSV or XLSX file with one callout a row: which lift, when the call came, the symptom; cause and
            fix where they were written down. Or sites and lifts alone. Formulas are not worked out.
          </p>
          <div>
            <FileTrigger
              acceptedFileTypes={[".csv", ".txt", ".tsv", ".xlsx"]}
              onSelect={(files) => {
                const file = files?.[0];
                if (file) void choose(file);
              }}
            >
              <Button kind={chosen ? "plain" : "first"} disabled={progress !== null}>
                {chosen ? "Choose another file" : "Choose a file"}
              </Button>
            </FileTrigger>
          </div>
          <ErrorNote error={error} />
          {finished && <p role="status">{finishedWords(finished)}</p>}
          {wasCancelled && <p role="status">Cancelled. What had been brought in was taken back.</p>}
        </section>
        {progress === null ? (
          <>
            <FoundPart work={work} />
            <CheckPart work={work} />
          </>
        ) : (
          <section className="stack">
            <RuledTitle>Bringing in</RuledTitle>
            <p role="status">
              {progress.done.toLocaleString("en-GB")} of {count(progress.of, "row")}, each part on the disk.
            </p>
            <progress
              className="import-progress"
              aria-label="Rows brought in"
              value={progress.done}
              max={progress.of}
            />
            <div>
              <Button onPress={cancel}>Cancel and take back</Button>
            </div>
          </section>
        )}
        <ImportsPart />
      </div>
    </>
  );
}

function finishedWords({ added, duplicates, refused, newLifts }: Finished): string {
  const parts = [`${count(added, "row")} brought in`];
  if (newLifts > 0) parts.push(`${count(newLifts, "lift")} added`);
  if (duplicates > 0) parts.push(`${count(duplicates, "row")} on the books already`);
  if (refused > 0)
    parts.push(`${count(refused, "row")} refused: save them below, correct them and bring them again`);
  return `${parts.join(", ")}.`;
}
