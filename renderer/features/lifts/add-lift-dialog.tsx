import { useNavigate } from "@tanstack/react-router";
import { Button } from "../../ui/button.tsx";
import { Dialog } from "../../ui/dialog.tsx";
import { ErrorNote } from "../../ui/error-note.tsx";
import { SelectField } from "../../ui/select-field.tsx";
import { useDraft } from "../../use-draft.ts";
import { useRead } from "../../use-read.ts";
import { useWrite } from "../../use-write.ts";
import { fieldProblemOf } from "../bridges/entry-parts.ts";
import { newLiftFields } from "./lift-fields.ts";
import { type RecordTexts, readRecord, textsOf } from "./record-fields.ts";
import { RecordFieldsForm } from "./record-fields-form.tsx";

interface AddLiftDialogProps {
  /** The site it is added to; left out: it is asked. */
  readonly siteId?: string;
  readonly open: boolean;
  readonly onClose: () => void;
}

interface AddLiftDraft {
  readonly siteId: string | null;
  readonly texts: RecordTexts;
  readonly tried: boolean;
}

const empty = textsOf(newLiftFields, {});

export function AddLiftDialog({ siteId: given, open, onClose }: AddLiftDialogProps) {
  const draft = useDraft<AddLiftDraft>(`lift.add ${given ?? ""}`, {
    siteId: given ?? null,
    texts: empty,
    tried: false,
  });
  const write = useWrite("lift.add");
  const sites = useRead("site.list", {}, { enabled: open && given === undefined });
  const navigate = useNavigate();
  const { siteId, texts, tried } = draft.value;
  const reading = readRecord(newLiftFields, texts, empty, new Date());
  const save = async () => {
    draft.set((before) => ({ ...before, tried: true }));
    if (!reading.clean || siteId === null) return;
    const result = await write.run({ siteId, name: texts.name ?? "", ...reading.changed });
    if (!result.ok) return;
    await draft.drop();
    onClose();
    await navigate({ to: "/lift/$id", params: { id: result.value.id } });
  };
  return (
    <Dialog
      title="Add a lift"
      open={open}
      onClose={onClose}
      wide
      actions={
        <>
          <Button kind="first" onPress={() => void save()} pending={write.pending}>
            Add the lift
          </Button>
          <Button onPress={onClose}>Not now, keep the draft</Button>
        </>
      }
    >
      <p className="soft">
        Site and name are needed. Landings, levels and everything else are entered on the lift’s own sheet.
      </p>
      {given === undefined && (
        <SelectField
          label="Site"
          options={(sites.value?.sites ?? []).map(({ id, name, street }) => ({
            id,
            words: name,
            note: street,
          }))}
          value={siteId}
          onChange={(next) => draft.set((before) => ({ ...before, siteId: next }))}
          problem={tried && siteId === null ? "Choose the site, or add it first." : undefined}
        />
      )}
      {draft.ready && (
        <RecordFieldsForm
          fields={newLiftFields}
          plain
          texts={texts}
          problems={Object.fromEntries(
            newLiftFields.map(({ key }) => [
              key,
              (tried ? reading.problems[key] : undefined) ?? fieldProblemOf(write.error, key),
            ]),
          )}
          onChange={(key, text) =>
            draft.set((before) => ({ ...before, texts: { ...before.texts, [key]: text } }))
          }
        />
      )}
      <ErrorNote error={write.error} />
    </Dialog>
  );
}
