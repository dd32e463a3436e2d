import { ListBox, ListBoxItem } from "react-aria-components/ListBox";
import { Text } from "react-aria-components/Text";
import type { Person } from "#shared-lib/contract/person.ts";
import { FieldError } from "../../ui/field-parts.tsx";

interface PeopleListProps {
  readonly label: string;
  readonly people: readonly Person[];
  readonly value: string | null;
  readonly onChange: (id: string) => void;
  /** Enter on a person, or a double press: goes on with this person at once. */
  readonly onEnter?: (id: string) => void;
  readonly problem?: string | undefined;
  readonly autoFocus?: boolean;
}

/** People to send, those on duty first, each with the telephone number. Arrow keys choose, letters jump. */
export function PeopleList(props: PeopleListProps) {
  const { label, people, value, onChange, onEnter, problem } = props;
  return (
    <div className={problem === undefined ? "field" : "field field-wrong"}>
      <span className="field-label">{label}</span>
      <ListBox
        aria-label={label}
        className="choices people-list entry-list"
        items={people}
        selectionMode="single"
        selectionBehavior="replace"
        disallowEmptySelection
        selectedKeys={value === null ? [] : [value]}
        onSelectionChange={(keys) => {
          const [first] = [...keys];
          if (first !== undefined) onChange(String(first));
        }}
        onAction={(key) => onEnter?.(String(key))}
        autoFocus={props.autoFocus === true ? "first" : false}
        renderEmptyState={() => (
          <div className="choices-empty">Nobody is entered yet. Add people in Settings.</div>
        )}
      >
        {(person) => (
          <ListBoxItem id={person.id} textValue={person.name} className="choices-item">
            <Text slot="label">{person.name}</Text>
            <Text slot="description" className="choices-note">
              {personNote(person)}
            </Text>
          </ListBoxItem>
        )}
      </ListBox>
      {problem !== undefined && <FieldError problem={problem} />}
    </div>
  );
}

/** "on duty, engineer, 555 0117" */
export function personNote(person: Pick<Person, "onDuty" | "role" | "telephone">): string {
  const telephone = person.telephone === "" ? "no telephone number entered" : person.telephone;
  return [person.onDuty ? "on duty" : undefined, person.role, telephone]
    .filter((part) => part !== undefined)
    .join(", ");
}

/** Those who can be sent: still here, on duty first, engineers before the office, then by name. */
export function peopleToSend(people: readonly Person[]): readonly Person[] {
  const rank = (person: Person) => (person.onDuty ? 0 : 2) + (person.role === "office" ? 1 : 0);
  return people
    .filter((person) => person.active)
    .sort((a, b) => rank(a) - rank(b) || a.name.localeCompare(b.name));
}
