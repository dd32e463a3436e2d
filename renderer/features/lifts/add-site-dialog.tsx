import { useNavigate } from "@tanstack/react-router";
import { Button } from "../../ui/button.tsx";
import { Dialog } from "../../ui/dialog.tsx";
import { ErrorNote } from "../../ui/error-note.tsx";
import { useDraft } from "../../use-draft.ts";
import { useWrite } from "../../use-write.ts";
import { fieldProblemOf } from "../bridges/entry-parts.ts";
import { siteFields } from "./lift-fields.ts";
import { type RecordTexts, readRecord, textsOf } from "./record-fields.ts";
import { RecordFieldsForm } from "./record-fields-form.tsx";

interface AddDialogProps {
  readonly open: boolean;
  readonly onClose: () => void;
}

const empty = textsOf(siteFields, {});
const start: { readonly texts: RecordTexts; readonly tried: boolean } = { texts: empty, tried: false };

export function AddSiteDialog({ open, onClose }: AddDialogProps) {
  const draft = useDraft("site.add", start);
  const write = useWrite("site.add");
  const navigate = useNavigate();
  const { texts, tried } = draft.value;
  const reading = readRecord(siteFields, texts, empty, new Date());
  const save = async () => {
    draft.set((before) => ({ ...before, tried: true }));
    if (!reading.clean) return;
    const result = await write.run({ name: texts.name ?? "", ...reading.changed });
    if (!result.ok) return;
    await draft.drop();
    onClose();
    await navigate({ to: "/site/$id", params: { id: result.value.id } });
  };
  return (
    <Dialog
      title="Add a site"
      open={open}
      onClose={onClose}
      wide
      actions={
        <>
          <Button kind="first" onPress={() => void save()} pending={write.pending}>
            Add the site
          </Button>
          <Button onPress={onClose}>Not now, keep the draft</Button>
        </>
      }
    >
      <p className="soft">Only the name is needed; the rest can come later.</p>
      {draft.ready && (
        <RecordFieldsForm
          fields={siteFields}
          texts={texts}
          problems={Object.fromEntries(
            siteFields.map(({ key }) => [
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
