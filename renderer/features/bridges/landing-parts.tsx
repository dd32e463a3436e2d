import type { Landing } from "#shared-lib/contract/lift.ts";
import { SelectField } from "../../ui/select-field.tsx";

interface LandingChoiceProps {
  readonly label: string;
  readonly landings: readonly Landing[];
  readonly value: string | null;
  readonly onChange: (id: string | null) => void;
  readonly problem?: string | undefined;
  readonly optional?: boolean;
}

const noLanding = "none";

/** A landing of the lift, from the highest down, or none. */
export function LandingChoice({ landings, value, onChange, ...rest }: LandingChoiceProps) {
  const options = [
    { id: noLanding, words: "no landing" },
    ...[...landings]
      .sort((a, b) => b.level - a.level)
      .map((landing) => ({
        id: landing.id,
        words: `${landing.marking}${landing.name === "" ? "" : `, ${landing.name}`}`,
      })),
  ];
  return (
    <SelectField
      {...rest}
      options={options}
      value={value ?? noLanding}
      onChange={(id) => onChange(id === noLanding ? null : id)}
    />
  );
}
