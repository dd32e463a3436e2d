import { type ReactNode, useRef } from "react";
import { Button } from "react-aria-components/Button";
import { ComboBox } from "react-aria-components/ComboBox";
import { Input } from "react-aria-components/Input";
import { ChoicesPopover, FieldArrow, type FieldOption } from "./choices-list.tsx";
import { FieldHead, type FieldProps, FieldTail, fieldClass } from "./field-parts.tsx";

export interface ComboFieldProps extends FieldProps {
  /** What stands in the field. */
  readonly text: string;
  /** Called with every change of the text: search and pass new `options`. */
  readonly onText: (text: string) => void;
  /** Already searched and in order; the field filters nothing itself. */
  readonly options: readonly FieldOption[];
  readonly chosenId: string | null;
  /** null: what was chosen no longer holds, because the text was changed. */
  readonly onChoose: (option: FieldOption | null) => void;
  /** True: words that are on no list may stay, for a lift that is not on the books. */
  readonly freeText?: boolean;
  readonly empty?: string;
  readonly aside?: ReactNode;
  readonly autoFocus?: boolean;
}

export function ComboField(props: ComboFieldProps) {
  const { text, onText, options, chosenId, onChoose, problem, aside } = props;
  const entry = useRef<HTMLDivElement>(null);
  const chosen = options.find((option) => option.id === chosenId);
  return (
    <ComboBox
      className={fieldClass(problem)}
      items={options}
      inputValue={text}
      onInputChange={(next) => {
        if (next === text) return;
        onText(next);
        if (chosenId !== null && next !== chosen?.words) onChoose(null);
      }}
      selectedKey={chosenId}
      onSelectionChange={(key) => {
        const option = options.find((one) => one.id === key);
        if (option === undefined) return;
        onChoose(option);
        onText(option.words);
      }}
      defaultFilter={() => true}
      menuTrigger="input"
      // Whatever was typed stays; the screen says below when it must be an entry of the list.
      allowsCustomValue
      allowsEmptyCollection={props.freeText !== true}
      isInvalid={problem !== undefined}
      isDisabled={props.disabled ?? false}
      autoFocus={props.autoFocus ?? false}
      {...(props.onBlur === undefined ? {} : { onBlur: props.onBlur })}
    >
      <FieldHead {...props} />
      <div className="entry" ref={entry}>
        <Input />
        {aside !== undefined && <span className="entry-unit">{aside}</span>}
        <Button className="entry-button">
          <FieldArrow />
        </Button>
      </div>
      <FieldTail {...props} />
      <ChoicesPopover under={entry} options={options} empty={props.empty ?? "Nothing found"} />
    </ComboBox>
  );
}
