import { Radio, RadioGroup } from "react-aria-components/RadioGroup";
import { FieldHead, type FieldProps, FieldTail, fieldClass } from "./field-parts.tsx";
import { type MarkKind, MarkShape } from "./mark.tsx";

export interface ChoiceOption<Id extends string> {
  readonly id: Id;
  readonly words: string;
  readonly mark?: MarkKind;
  readonly disabled?: boolean;
}

export interface ChoiceProps<Id extends string> extends FieldProps {
  readonly options: readonly ChoiceOption<Id>[];
  readonly value: Id | null;
  readonly onChange: (id: Id) => void;
}

/** Words side by side; the chosen one has a heavy frame and bold text; arrow keys change it. */
export function Choice<Id extends string>(props: ChoiceProps<Id>) {
  const { options, value, onChange, problem } = props;
  return (
    <RadioGroup
      className={fieldClass(problem)}
      orientation="horizontal"
      value={value}
      onChange={(next) => {
        const option = options.find((one) => one.id === next);
        if (option !== undefined) onChange(option.id);
      }}
      isInvalid={problem !== undefined}
      isDisabled={props.disabled ?? false}
    >
      <FieldHead {...props} />
      <div className="choice">
        {options.map((option) => (
          <Radio
            key={option.id}
            value={option.id}
            className="choice-word"
            isDisabled={option.disabled ?? false}
          >
            {option.mark !== undefined && <MarkShape kind={option.mark} />}
            <span className="choice-text" data-text={option.words}>
              {option.words}
            </span>
          </Radio>
        ))}
      </div>
      <FieldTail {...props} />
    </RadioGroup>
  );
}
