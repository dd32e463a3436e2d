import { Button } from "./button.tsx";
import { MarkShape } from "./mark.tsx";

export interface ConflictField {
  readonly label: string;
  readonly mine: string;
  readonly theirs: string;
}

interface ConflictViewProps {
  /** Who changed it meanwhile: "Ines Calder, 10:41"; left out when it is not known. */
  readonly changedBy?: string;
  readonly fields: readonly ConflictField[];
  /** Save mine over the newer one, which stays in the history. */
  readonly onSaveMine: () => void;
  /** Put the newer text in the form; mine stays in the draft until then. */
  readonly onTakeTheirs: () => void;
  readonly pending?: boolean;
}

/** Both texts side by side; what differs has a heavy line. Nothing was overwritten. */
export function ConflictView({
  changedBy,
  fields,
  onSaveMine,
  onTakeTheirs,
  pending = false,
}: ConflictViewProps) {
  const differing = fields.filter((field) => field.mine !== field.theirs);
  return (
    <section className="conflict" aria-label="Two versions of this record">
      <p className="error-says" role="alert">
        <MarkShape kind="stepped" />
        <span>
          Not saved: this record was changed after you opened it
          {changedBy !== undefined && `, by ${changedBy}`}. Both texts are kept.
        </span>
      </p>
      <div className="conflict-sides">
        <Side title="Yours" fields={differing} pick={(field) => field.mine} />
        <Side title="Saved meanwhile" fields={differing} pick={(field) => field.theirs} />
      </div>
      <div className="buttons">
        <Button onPress={onSaveMine} pending={pending}>
          Save yours as the newest
        </Button>
        <Button onPress={onTakeTheirs}>Go on from the saved one</Button>
      </div>
    </section>
  );
}

interface SideProps {
  readonly title: string;
  readonly fields: readonly ConflictField[];
  readonly pick: (field: ConflictField) => string;
}

function Side({ title, fields, pick }: SideProps) {
  return (
    <div className="stack">
      <h3>{title}</h3>
      {fields.map((field) => (
        <div key={field.label}>
          <div className="label soft">{field.label}</div>
          <div className="conflict-text conflict-differs">
            {pick(field) || <span className="soft">empty</span>}
          </div>
        </div>
      ))}
    </div>
  );
}
