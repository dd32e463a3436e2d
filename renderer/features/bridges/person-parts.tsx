import { SelectField } from "../../ui/select-field.tsx";
import { useProgram } from "../../use-program.ts";

interface PersonChoiceProps {
  readonly label: string;
  readonly value: string | null;
  readonly onChange: (id: string) => void;
  readonly problem?: string | undefined;
  readonly hint?: string;
}

/** One named person of the company, from those who are still here. */
export function PersonChoice(props: PersonChoiceProps) {
  const { people } = useProgram();
  const options = people
    .filter((person) => person.active || person.id === props.value)
    .map((person) => ({ id: person.id, words: person.name, note: person.role }));
  return <SelectField {...props} options={options} none="Choose a person" />;
}
