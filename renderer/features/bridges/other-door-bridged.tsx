import { Button } from "../../ui/button.tsx";
import { FieldError } from "../../ui/field-parts.tsx";
import { useRead } from "../../use-read.ts";
import { bridgeAcross, otherDoorOpen } from "./bridge-parts.ts";
import type { SetBridgeDraft } from "./set-bridge-draft.ts";

interface OtherDoorBridgedProps {
  readonly liftId: string;
  readonly contact: SetBridgeDraft["contact"];
  /** To the entry of a danger: both doors were found bridged. */
  readonly onDanger: () => void;
}

/** Said as soon as the contact is chosen, so that nobody sets the lead before the register refuses it. */
export function OtherDoorBridged({ liftId, contact, onDanger }: OtherDoorBridgedProps) {
  const read = useRead("bridge.list", { liftId, open: true }, { entities: ["bridge"] });
  const other = otherDoorOpen(contact, read.value?.bridges ?? []);
  if (other === undefined) return null;
  return (
    <div className="stack">
      <FieldError
        problem={`Refused: ${other.number} is open across ${bridgeAcross(other)}. Car door and landing door are never bridged together. Do not set this one; were both found bridged, record that as a danger.`}
      />
      <div className="buttons">
        <Button onPress={onDanger}>Doors found bridged</Button>
      </div>
    </div>
  );
}
