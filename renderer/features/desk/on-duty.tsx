import { Fragment, useState } from "react";
import { Button } from "../../ui/button.tsx";
import { Dialog } from "../../ui/dialog.tsx";
import { useCommand } from "../../use-command.ts";
import { useProgram } from "../../use-program.ts";
import { useWrite } from "../../use-write.ts";
import { PeopleList, peopleToSend } from "../callout/people-list.tsx";
import { PersonField } from "../callout/person-field.tsx";
import { Refused } from "../callout/way-out.tsx";

/** Whom to ring: who is on duty now, with the telephone number, and handing over. */
export function OnDuty() {
  const { people } = useProgram();
  const [handing, setHanding] = useState(false);
  useCommand({ name: "Hand over duty", keys: "Alt H", group: "Desk", run: () => setHanding(true) });
  const onDuty = people.filter((person) => person.active && person.onDuty);
  return (
    <div className="row on-duty">
      {onDuty.length === 0 ? (
        <b className="pencil">Nobody is on duty.</b>
      ) : (
        <span>
          <span className="soft">On duty:</span>{" "}
          {onDuty.map((person, i) => (
            <Fragment key={person.id}>
              {i > 0 && " · "}
              <span className="nowrap">
                <b>{person.name}</b> {person.telephone === "" ? "no number" : person.telephone}
              </span>
            </Fragment>
          ))}
        </span>
      )}
      <Button kind="quiet" keys="Alt H" onPress={() => setHanding(true)}>
        Hand over duty
      </Button>
      {handing && <HandOverDialog onClose={() => setHanding(false)} />}
    </div>
  );
}

function HandOverDialog({ onClose }: { readonly onClose: () => void }) {
  const { people } = useProgram();
  const onDuty = people.filter((person) => person.active && person.onDuty);
  const [from, setFrom] = useState<string | null>(onDuty[0]?.id ?? null);
  const others = peopleToSend(people).filter((person) => !person.onDuty);
  const [to, setTo] = useState<string | null>(others[0]?.id ?? null);
  const write = useWrite("person.handOverDuty");
  const handOver = async (toWhom: string | null) => {
    if (toWhom === null) return;
    const result = await write.run({ from, to: toWhom });
    if (result.ok) onClose();
  };
  return (
    <Dialog
      title="Hand over duty"
      open
      onClose={onClose}
      actions={
        <>
          <Button
            kind="first"
            keys="Enter"
            pending={write.pending}
            disabled={to === null}
            onPress={() => void handOver(to)}
          >
            Hand over
          </Button>
          <Button kind="quiet" onPress={onClose}>
            Cancel
          </Button>
        </>
      }
    >
      {onDuty.length > 0 && (
        <PersonField label="Goes off duty" people={onDuty} value={from} onChange={setFrom} />
      )}
      {others.length === 0 ? (
        <p>Everybody who is entered is on duty already.</p>
      ) : (
        <PeopleList
          label="Comes on duty"
          people={others}
          value={to}
          onChange={setTo}
          onEnter={(id) => void handOver(id)}
          autoFocus
        />
      )}
      <Refused error={write.error} />
    </Dialog>
  );
}
