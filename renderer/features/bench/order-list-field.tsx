import { type KeyboardEvent, useId } from "react";
import type { OrderField } from "#shared-lib/calculators/field.ts";
import { Button } from "../../ui/button.tsx";
import { FieldError, fieldClass } from "../../ui/field-parts.tsx";

interface OrderListFieldProps {
  readonly field: OrderField;
  /** undefined: not run, or not yet entered. An empty list: watched, and nothing came. */
  readonly value: readonly string[] | undefined;
  readonly onChange: (next: readonly string[] | null) => void;
  readonly hint?: string;
  readonly from?: string | undefined;
  readonly problem?: string | undefined;
}

/** What a key does here: digits add the event of that number, Backspace takes the last one back. */
function afterKey(
  key: string,
  field: OrderField,
  value: readonly string[] | undefined,
): readonly string[] | null | undefined {
  if (key === "Backspace")
    return value === undefined ? undefined : value.length > 1 ? value.slice(0, -1) : null;
  const item = /^[1-9]$/.test(key) ? field.items[Number(key) - 1] : undefined;
  const list = value ?? [];
  return item === undefined || list.length >= field.longest ? undefined : [...list, item.id];
}

/** Events in the order they came: one button and one digit for each, so that one hand enters them while the car runs. */
export function OrderListField(props: OrderListFieldProps) {
  const { field, value, onChange, hint, from, problem } = props;
  const id = useId();
  const act = (key: string): boolean => {
    const next = afterKey(key, field, value);
    if (next !== undefined) onChange(next);
    return next !== undefined;
  };
  const pressed = (event: KeyboardEvent): void => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    if (act(event.key)) {
      event.preventDefault();
      event.stopPropagation();
    }
  };
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset cannot lay out its legend beside the hint.
    <div className={fieldClass(problem)} role="group" aria-labelledby={id} onKeyDown={pressed}>
      <div className="field-head">
        <span className="field-label" id={id}>
          {field.label}
        </span>
        {hint !== undefined && <span className="field-hint">{hint}</span>}
      </div>
      <SeenOrder field={field} value={value} />
      <OrderActs field={field} value={value} onChange={onChange} act={act} />
      {from !== undefined && <span className="field-from">{from}</span>}
      {problem !== undefined && <FieldError problem={problem} />}
    </div>
  );
}

/** The same event may come twice; its place tells the two apart. */
function counted(ids: readonly string[]): readonly { id: string; place: number; key: string }[] {
  return ids.map((id, index) => ({ id, place: index + 1, key: `${index + 1} ${id}` }));
}

function SeenOrder({ field, value }: Pick<OrderListFieldProps, "field" | "value">) {
  const wordsOf = (id: string): string => field.items.find((item) => item.id === id)?.words ?? id;
  return (
    <ol className="order-list" aria-live="polite">
      {value === undefined && <li className="soft">not run</li>}
      {value?.length === 0 && <li>nothing came</li>}
      {counted(value ?? []).map((event) => (
        <li key={event.key}>
          <span className="soft">{event.place}</span> {wordsOf(event.id)}
        </li>
      ))}
    </ol>
  );
}

interface OrderActsProps extends Pick<OrderListFieldProps, "field" | "value" | "onChange"> {
  readonly act: (key: string) => boolean;
}

function OrderActs({ field, value, onChange, act }: OrderActsProps) {
  return (
    <div className="order-acts">
      {field.items.map((item, index) => (
        <Button
          key={item.id}
          keys={String(index + 1)}
          label={`${item.words}, add to ${field.label}`}
          onPress={() => act(String(index + 1))}
        >
          {item.words}
        </Button>
      ))}
      <Button
        kind="quiet"
        label={`Take back the last, ${field.label}`}
        disabled={value === undefined}
        onPress={() => act("Backspace")}
      >
        Take back
      </Button>
      <Button kind="quiet" label={`Nothing came, ${field.label}`} onPress={() => onChange([])}>
        Nothing came
      </Button>
      <Button
        kind="quiet"
        label={`Not run, ${field.label}`}
        disabled={value === undefined}
        onPress={() => onChange(null)}
      >
        Not run
      </Button>
    </div>
  );
}
