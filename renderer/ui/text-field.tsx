import type { KeyboardEvent, ReactNode, Ref } from "react";
import { Input } from "react-aria-components/Input";
import { TextArea as AriaTextArea } from "react-aria-components/TextArea";
import { TextField as AriaTextField } from "react-aria-components/TextField";
import { FieldHead, type FieldProps, FieldTail, fieldClass } from "./field-parts.tsx";

export interface TextFieldProps extends FieldProps {
  readonly value: string;
  readonly onChange: (text: string) => void;
  readonly unit?: ReactNode;
  readonly type?: "text" | "tel" | "search" | "email" | "url";
  readonly inputMode?: "text" | "decimal" | "numeric" | "tel";
  readonly autoFocus?: boolean;
  /** Terminal markings: in the marking face, never corrected by the browser. */
  readonly marking?: boolean;
  readonly onKeyDown?: (event: KeyboardEvent<HTMLInputElement>) => void;
  readonly inputRef?: Ref<HTMLInputElement>;
}

export function TextField(props: TextFieldProps) {
  const { value, onChange, unit, marking = false, problem } = props;
  return (
    <AriaTextField
      className={fieldClass(problem)}
      value={value}
      onChange={onChange}
      type={props.type ?? "text"}
      isInvalid={problem !== undefined}
      isDisabled={props.disabled ?? false}
      autoFocus={props.autoFocus ?? false}
      autoComplete="off"
      spellCheck={marking ? "false" : "true"}
      {...(props.inputMode === undefined ? {} : { inputMode: props.inputMode })}
      {...(props.onBlur === undefined ? {} : { onBlur: props.onBlur })}
    >
      <FieldHead {...props} />
      <div className={marking ? "entry entry-marking" : "entry"}>
        <Input
          {...(props.inputRef === undefined ? {} : { ref: props.inputRef })}
          {...(props.onKeyDown === undefined ? {} : { onKeyDown: props.onKeyDown })}
        />
        {unit !== undefined && <span className="entry-unit">{unit}</span>}
      </div>
      <FieldTail {...props} />
    </AriaTextField>
  );
}

export interface TextAreaProps extends FieldProps {
  readonly value: string;
  readonly onChange: (text: string) => void;
  readonly rows?: number;
  readonly autoFocus?: boolean;
  readonly marking?: boolean;
}

export function TextArea(props: TextAreaProps) {
  return (
    <AriaTextField
      className={fieldClass(props.problem)}
      value={props.value}
      onChange={props.onChange}
      isInvalid={props.problem !== undefined}
      isDisabled={props.disabled ?? false}
      autoFocus={props.autoFocus ?? false}
      {...(props.onBlur === undefined ? {} : { onBlur: props.onBlur })}
    >
      <FieldHead {...props} />
      <div className={props.marking === true ? "entry entry-marking" : "entry"}>
        <AriaTextArea rows={props.rows ?? 2} />
      </div>
      <FieldTail {...props} />
    </AriaTextField>
  );
}
