import type { Person } from "#shared-lib/contract/person.ts";
import { SelectField } from "../../ui/select-field.tsx";
import { personNote } from "./people-list.tsx";

interface PersonFieldProps {
  readonly label: string;
  readonly people: readonly Person[];
  readonly value: string | null;
  readonly onChange: (id: string) => void;
  readonly problem?: string | undefined;
  readonly hint?: string;
}

/** One named person of the company, from those who are still here. */
export function PersonField({ people, ...rest }: PersonFieldProps) {
  const options = people
    .filter((person) => person.active || person.id === rest.value)
    .map((person) => ({ id: person.id, words: person.name, note: personNote(person) }));
  return <SelectField {...rest} options={options} none="Choose a person" />;
}
