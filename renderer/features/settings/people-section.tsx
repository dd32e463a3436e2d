import { useState } from "react";
import type { Person } from "#shared-lib/contract/person.ts";
import { Button } from "../../ui/button.tsx";
import { RuledTitle } from "../../ui/ruled-title.tsx";
import { Table, type TableColumn } from "../../ui/table.tsx";
import { useProgram } from "../../use-program.ts";
import { PersonDialog } from "./person-dialog.tsx";

type Chosen = Person | "new" | null;

export function PeopleSection() {
  const { people } = useProgram();
  const [chosen, setChosen] = useState<Chosen>(null);
  const columns: TableColumn<Person>[] = [
    {
      id: "name",
      head: "Name",
      rowHead: true,
      sortBy: (person) => person.name,
      cell: (person) => (
        <Button kind="quiet" onPress={() => setChosen(person)}>
          {person.name}
        </Button>
      ),
    },
    { id: "role", head: "Role", cell: (person) => person.role },
    {
      id: "telephone",
      head: "Telephone",
      cell: (person) => <span className="nowrap">{person.telephone}</span>,
    },
    {
      id: "duty",
      head: "Duty",
      cell: (person) => (person.active ? (person.onDuty ? "on duty now" : "off duty") : "has left"),
    },
  ];
  return (
    <section className="stack">
      <RuledTitle count={people.filter((person) => person.active).length}>People</RuledTitle>
      <Table label="People" columns={columns} rows={people} rowKey={(person) => person.id} />
      <div className="buttons">
        <Button onPress={() => setChosen("new")}>Add a person</Button>
      </div>
      {chosen !== null && (
        <PersonDialog person={chosen === "new" ? null : chosen} onClose={() => setChosen(null)} />
      )}
    </section>
  );
}
