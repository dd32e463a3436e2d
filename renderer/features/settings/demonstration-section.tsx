import { useState } from "react";
import { Button } from "../../ui/button.tsx";
import { Dialog } from "../../ui/dialog.tsx";
import { ErrorNote } from "../../ui/error-note.tsx";
import { RuledTitle } from "../../ui/ruled-title.tsx";
import { useWrite } from "../../use-write.ts";

export function DemonstrationSection() {
  const [asking, setAsking] = useState(false);
  const remove = useWrite("demonstration.remove");
  return (
    <section className="stack">
      <RuledTitle>Demonstration data</RuledTitle>
      <p>Company, people, lifts and callouts in this folder are invented.</p>
      <div className="buttons">
        <Button onPress={() => setAsking(true)}>Remove the demonstration</Button>
      </div>
      <Dialog
        title="Remove the demonstration company?"
        role="alertdialog"
        open={asking}
        onClose={() => setAsking(false)}
        actions={
          <>
            <Button kind="first" pending={remove.pending} onPress={() => void remove.run({})}>
              Remove
            </Button>
            <Button onPress={() => setAsking(false)}>Keep it</Button>
          </>
        }
      >
        <p>
          Everything in this folder goes, and Sillbook starts empty with your own company. A backup is kept in
          the data folder.
        </p>
        <ErrorNote error={remove.error} />
      </Dialog>
    </section>
  );
}
