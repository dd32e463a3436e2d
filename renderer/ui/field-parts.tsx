import type { ReactNode } from "react";
import { Label } from "react-aria-components/Label";
import { Text } from "react-aria-components/Text";
import { MarkShape } from "./mark.tsx";

/** What every field of the family takes. */
export interface FieldProps {
  readonly label: string;
  /** Said in the label: the field may stay empty. */
  readonly optional?: boolean;
  /** Short words at the right of the label; drops out below 70 rem when `hintWideOnly`. */
  readonly hint?: ReactNode;
  readonly hintWideOnly?: boolean;
  /** Where a prefilled value is from: "from the site's drawing". */
  readonly from?: string | undefined;
  /** One sentence: what is wrong, what was probably meant, what happens meanwhile. */
  readonly problem?: string | undefined;
  readonly disabled?: boolean;
  readonly onBlur?: () => void;
}

type HeadProps = Pick<FieldProps, "label" | "optional" | "hint" | "hintWideOnly">;

export function FieldHead({ label, optional = false, hint, hintWideOnly = false }: HeadProps) {
  return (
    <div className="field-head">
      <Label className="field-label">
        {label}
        {optional && <span className="field-optional"> optional</span>}
      </Label>
      {hint !== undefined && <span className={`field-hint${hintWideOnly ? " wide-only" : ""}`}>{hint}</span>}
    </div>
  );
}

/** Below the entry: where the value is from, and the stepped sill with its sentence. Announced with the field. */
export function FieldTail({ from, problem }: Pick<FieldProps, "from" | "problem">) {
  return (
    <>
      {from !== undefined && <span className="field-from">{from}</span>}
      {problem !== undefined && (
        <Text slot="description" elementType="div">
          <FieldError problem={problem} />
        </Text>
      )}
    </>
  );
}

export function FieldError({ problem }: { readonly problem: string }) {
  return (
    <div className="field-error" role="alert">
      <MarkShape kind="stepped" />
      <span>{problem}</span>
    </div>
  );
}

export function fieldClass(problem: string | undefined): string {
  return problem === undefined ? "field" : "field field-wrong";
}
