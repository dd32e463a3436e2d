import { type ClipboardEvent, type KeyboardEvent, useId, useRef, useState } from "react";
import type { TableField as Field } from "#shared-lib/calculators/field.ts";
import type { TableColumn } from "#shared-lib/calculators/table-field.ts";
import { type UnitSystem, unitIn } from "#shared-lib/quantities.ts";
import { FieldError, fieldClass } from "../../ui/field-parts.tsx";
import type { TypedRow } from "./entries.ts";
import { blockOf, type CellPlace, shownCell, withBlock } from "./table-entries.ts";
import { unitSign } from "./unit-words.ts";

interface TableFieldProps {
  readonly field: Field;
  readonly rows: readonly TypedRow[];
  readonly onChange: (rows: readonly TypedRow[]) => void;
  readonly system: UnitSystem;
  readonly hint?: string;
  readonly from?: string | undefined;
  readonly problem?: string | undefined;
}

function headOf(column: TableColumn, system: UnitSystem): string {
  const sign = column.kind === "number" ? unitSign(unitIn(system, column.unit)) : undefined;
  return sign === undefined ? column.label : `${column.label}, ${sign}`;
}

/** A row is its place in the table and nothing else. */
const numbered = (rows: readonly TypedRow[]) =>
  rows.map((row, index) => ({ row, index, key: `row ${index + 1}` }));

/**
 * Rows typed like a sheet: Enter and Tab go to the next cell, arrow keys up and down, a new row stands ready at the
 * end, and a block copied from a spreadsheet is laid over from the cell it is pasted into.
 */
export function TableField(props: TableFieldProps) {
  const { field, rows, onChange, system, hint, from, problem } = props;
  const id = useId();
  const body = useRef<HTMLTableSectionElement>(null);
  const [leftOut, setLeftOut] = useState(0);
  const shown = rows.length < field.most ? [...rows, {}] : rows;
  const put = (place: CellPlace, block: readonly (readonly string[])[]): void => {
    const next = withBlock(field, rows, place, block, system);
    setLeftOut(next.leftOut);
    onChange(next.rows);
  };
  const go = (row: number, column: number): boolean => {
    const cell = body.current?.rows[row]?.cells[column + 1]?.querySelector<HTMLElement>("input, select");
    cell?.focus();
    if (cell instanceof HTMLInputElement) cell.select();
    return cell != null;
  };
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset cannot lay out its legend beside the hint.
    <div className={fieldClass(problem)} role="group" aria-labelledby={id}>
      <div className="field-head">
        <span className="field-label" id={id}>
          {field.label}
        </span>
        {hint !== undefined && <span className="field-hint">{hint}</span>}
      </div>
      <div className="scroll-frame">
        <table className="entry-table" aria-labelledby={id}>
          <thead>
            <tr>
              <th scope="col">Row</th>
              {field.columns.map((column) => (
                <th key={column.key} scope="col">
                  {headOf(column, system)}
                </th>
              ))}
              <th scope="col">
                <span className="seen-by-reader-only">Take away</span>
              </th>
            </tr>
          </thead>
          <tbody ref={body}>
            {numbered(shown).map(({ row, index, key }) => (
              <Row
                key={key}
                {...{ field, row, index, system, put, go }}
                onTakeAway={
                  index < rows.length ? () => onChange(rows.filter((_, one) => one !== index)) : undefined
                }
              />
            ))}
          </tbody>
        </table>
      </div>
      {leftOut > 0 && (
        <p className="label" role="status">
          {`${leftOut} of the pasted cells had no place in this table.`}
        </p>
      )}
      {from !== undefined && <span className="field-from">{from}</span>}
      {problem !== undefined && <FieldError problem={problem} />}
    </div>
  );
}

interface RowProps {
  readonly field: Field;
  readonly row: TypedRow;
  readonly index: number;
  readonly system: UnitSystem;
  readonly put: (place: CellPlace, block: readonly (readonly string[])[]) => void;
  readonly go: (row: number, column: number) => boolean;
  readonly onTakeAway: (() => void) | undefined;
}

function Row({ field, row, index, system, put, go, onTakeAway }: RowProps) {
  const last = field.columns.length - 1;
  const pressed = (event: KeyboardEvent, column: number): void => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const isSelect = event.target instanceof HTMLSelectElement;
    let moved = false;
    if (event.key === "Enter") moved = column < last ? go(index, column + 1) : go(index + 1, 0);
    else if (isSelect) return;
    else if (event.key === "ArrowDown") moved = go(index + 1, column);
    else if (event.key === "ArrowUp") moved = go(index - 1, column);
    if (moved || event.key === "Enter") event.preventDefault();
  };
  const pasted = (event: ClipboardEvent, column: number): void => {
    const text = event.clipboardData.getData("text/plain");
    if (!/[\t\n\r]/.test(text)) return;
    event.preventDefault();
    put({ row: index, column }, blockOf(text));
  };
  return (
    <tr>
      <td className="soft">{index + 1}</td>
      {field.columns.map((column, place) => (
        <td
          key={column.key}
          onKeyDown={(event) => pressed(event, place)}
          onPaste={(event) => pasted(event, place)}
        >
          <Cell
            column={column}
            label={`${column.label}, row ${index + 1}`}
            text={shownCell(column, row[column.key], system)}
            onText={(text) => put({ row: index, column: place }, [[text]])}
          />
        </td>
      ))}
      <td>
        {onTakeAway !== undefined && (
          <button
            type="button"
            className="entry-table-away"
            aria-label={`Take away row ${index + 1}`}
            onClick={onTakeAway}
          >
            ×
          </button>
        )}
      </td>
    </tr>
  );
}

interface CellProps {
  readonly column: TableColumn;
  readonly label: string;
  readonly text: string;
  readonly onText: (text: string) => void;
}

function Cell({ column, label, text, onText }: CellProps) {
  if (column.kind !== "choice") {
    return (
      <input
        aria-label={label}
        className={column.kind === "number" ? "entry-number" : undefined}
        value={text}
        maxLength={column.kind === "text" ? column.longest : 40}
        onChange={(event) => onText(event.target.value)}
      />
    );
  }
  const known = text === "" || column.options.some(({ id }) => id === text);
  return (
    <select aria-label={label} value={text} onChange={(event) => onText(event.target.value)}>
      <option value="" />
      {!known && <option value={text}>{text}</option>}
      {column.options.map(({ id, words }) => (
        <option key={id} value={id}>
          {words}
        </option>
      ))}
    </select>
  );
}
