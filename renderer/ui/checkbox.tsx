import type { ReactNode } from "react";
import { Checkbox as AriaCheckbox } from "react-aria-components/Checkbox";
import { FieldError } from "./field-parts.tsx";

export interface CheckboxProps {
  readonly children: ReactNode;
  readonly checked: boolean;
  readonly onChange: (checked: boolean) => void;
  readonly problem?: string | undefined;
  readonly disabled?: boolean;
}

export function Checkbox({ children, checked, onChange, problem, disabled = false }: CheckboxProps) {
  return (
    <div className="field">
      <AriaCheckbox
        className="checkbox"
        isSelected={checked}
        onChange={onChange}
        isInvalid={problem !== undefined}
        isDisabled={disabled}
      >
        {({ isSelected }) => (
          <>
            <svg className="checkbox-box" viewBox="0 0 20 20" aria-hidden="true">
              {isSelected && <path d="M4 10.5L8.5 15L16.5 5" />}
            </svg>
            <span>{children}</span>
          </>
        )}
      </AriaCheckbox>
      {problem !== undefined && <FieldError problem={problem} />}
    </div>
  );
}
