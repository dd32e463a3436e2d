import { Button } from "react-aria-components/Button";
import { Select, SelectValue } from "react-aria-components/Select";
import { ChoicesPopover, FieldArrow, type FieldOption } from "./choices-list.tsx";
import { FieldHead, type FieldProps, FieldTail, fieldClass } from "./field-parts.tsx";

export interface SelectFieldProps<Id extends string> extends FieldProps {
  readonly options: readonly (FieldOption & { readonly id: Id })[];
  readonly value: Id | null;
  readonly onChange: (id: Id) => void;
  /** What stands in the field while nothing is chosen. */
  readonly none?: string;
}

export function SelectField<Id extends string>(props: SelectFieldProps<Id>) {
  const { options, value, onChange, problem, none = "Choose" } = props;
  const chosen = options.find((option) => option.id === value);
  return (
    <Select
      className={fieldClass(problem)}
      value={value}
      onChange={(key) => {
        const option = options.find((one) => one.id === key);
        if (option !== undefined) onChange(option.id);
      }}
      isInvalid={problem !== undefined}
      isDisabled={props.disabled ?? false}
      {...(props.onBlur === undefined ? {} : { onBlur: props.onBlur })}
    >
      <FieldHead {...props} />
      <Button className="entry">
        <SelectValue className="entry-value">
          {chosen?.words ?? <span className="soft">{none}</span>}
        </SelectValue>
        <FieldArrow />
      </Button>
      <FieldTail {...props} />
      <ChoicesPopover options={options} empty="Nothing to choose from yet" />
    </Select>
  );
}
