import { Button } from "../../ui/button.tsx";
import { Checkbox } from "../../ui/checkbox.tsx";
import { RuledTitle } from "../../ui/ruled-title.tsx";
import { SelectField } from "../../ui/select-field.tsx";
import { Table } from "../../ui/table.tsx";
import { count } from "./import-words.ts";
import type { Checked, TableImport } from "./use-table-import.ts";

const shown = 50;

/** What bringing the table in would do, with what a person has to settle before. */
export function CheckPart({ work }: { readonly work: TableImport }) {
  const { mapped, checked, question, settle, bringIn } = work;
  if (!mapped) return null;
  return (
    <section className="stack">
      <RuledTitle>What bringing it in does</RuledTitle>
      {question !== null && <p>{askedWords(work)}</p>}
      {question === null && checked === null && <p role="status">Looking through the rows …</p>}
      {checked !== null && (
        <>
          <p role="status">{outcomeWords(checked, mapped.mapping.kind)}</p>
          <Checkbox checked={mapped.mapping.addLifts} onChange={(addLifts) => settle({ addLifts })}>
            Add lifts that are not on the books, with their sites
          </Checkbox>
          <LiftsToSettle work={work} checked={checked} />
          <Reasons checked={checked} />
          <div>
            <Button kind="first" disabled={checked.preview.added === 0} onPress={() => void bringIn()}>
              Bring in {count(checked.preview.added, mapped.mapping.kind === "lifts" ? "lift" : "callout")}
            </Button>
          </div>
        </>
      )}
    </section>
  );
}

function askedWords({ mapped }: TableImport): string {
  if (!mapped?.mapping.columns.receivedAt) return "Say above which column tells when the call was received.";
  if (!mapped.mapping.columns.said) return "Say above which column holds the symptom.";
  return "Say above how the dates are written.";
}

function outcomeWords({ preview }: Checked, kind: string): string {
  const { added, duplicates, refused, newSites, newLifts } = preview;
  const parts = [`${count(added, kind === "lifts" ? "lift" : "callout")} will be added`];
  if (newLifts > 0 && kind !== "lifts")
    parts.push(`${count(newLifts, "lift")} with ${count(newSites, "site")} too`);
  if (duplicates > 0) parts.push(`${count(duplicates, "row")} on the books already`);
  if (refused > 0) parts.push(`${count(refused, "row")} cannot be brought in as they are`);
  return `${parts.join(", ")}.`;
}

/** Names that are like one on the books: a person says which is meant. */
function LiftsToSettle({ work, checked }: { readonly work: TableImport; readonly checked: Checked }) {
  const doubtful = checked.liftsToSettle.filter(({ couldBe }) => couldBe.length > 0);
  if (doubtful.length === 0) return null;
  const lifts = work.mapped?.mapping.lifts ?? {};
  return (
    <div className="stack">
      <RuledTitle level={3} count={doubtful.length}>
        Which lift is meant?
      </RuledTitle>
      <div className="import-columns">
        {doubtful.slice(0, shown).map(({ words, couldBe }) => (
          <SelectField
            key={words}
            label={words}
            options={[
              ...couldBe.map(({ id, title }) => ({ id, words: title })),
              { id: "new", words: "Another lift: add it" },
            ]}
            value={lifts[words] ?? null}
            onChange={(id) => work.settle({ lifts: { ...lifts, [words]: id } })}
          />
        ))}
      </div>
    </div>
  );
}

function Reasons({ checked }: { readonly checked: Checked }) {
  const { reasons } = checked.preview;
  if (reasons.length === 0) return null;
  return (
    <div className="stack">
      <RuledTitle level={3} count={reasons.length}>
        Rows that cannot be brought in
      </RuledTitle>
      <Table
        label="Rows that cannot be brought in"
        rows={reasons.slice(0, shown)}
        rowKey={({ rowNumber, reason }) => `${rowNumber} ${reason}`}
        columns={[
          { id: "row", head: "Line", number: true, rowHead: true, cell: ({ rowNumber }) => rowNumber },
          { id: "reason", head: "Why", cell: ({ reason }) => reason },
        ]}
      />
      <p className="soft">
        {reasons.length > shown && `The first ${shown} of ${reasons.length}. `}
        They are kept with their reasons, and can be saved as a file, corrected and brought again.
      </p>
    </div>
  );
}
