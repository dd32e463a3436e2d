import { useState } from "react";
import { Button } from "../../ui/button.tsx";
import { ErrorNote } from "../../ui/error-note.tsx";
import { RuledTitle } from "../../ui/ruled-title.tsx";
import { TextField } from "../../ui/text-field.tsx";
import { useProgram } from "../../use-program.ts";
import { useWrite } from "../../use-write.ts";

export function CompanySection() {
  const { device } = useProgram();
  const stored = device.company?.name ?? "";
  const [name, setName] = useState(stored);
  const change = useWrite("company.change");
  return (
    <section className="stack">
      <RuledTitle>Company</RuledTitle>
      <TextField label="Name" value={name} onChange={setName} />
      {name.trim() !== stored && (
        <div className="buttons">
          <Button
            onPress={() => void change.run({ name })}
            pending={change.pending}
            disabled={name.trim() === ""}
          >
            Save the name
          </Button>
        </div>
      )}
      <ErrorNote error={change.error} />
    </section>
  );
}
