import { TextArea, TextField } from "../../ui/text-field.tsx";
import { EntryList } from "./list-editor.tsx";
import type { NoteFieldsProps } from "./note-fields.tsx";
import { changed, type FormCause, newKey } from "./note-form.ts";

/** The causes in order of likelihood. */
export function CauseFields({ form, onChange, problems }: NoteFieldsProps) {
  const { causes } = form;
  const setCauses = (next: readonly FormCause[]) => onChange({ causes: next });
  return (
    <EntryList
      one="Cause"
      items={causes}
      onItems={setCauses}
      addWord="Add a cause"
      most={40}
      make={() => ({ key: newKey(), title: "", tell: "", fix: "", caution: "", source: "" })}
    >
      {(cause, index) => {
        const set = (change: Partial<FormCause>) => setCauses(changed(causes, index, change));
        const problem = (field: string) => problems.get(`causes.${index}.${field}`);
        return (
          <>
            <TextField
              label={`Cause ${index + 1}`}
              value={cause.title}
              onChange={(title) => set({ title })}
              problem={problem("title")}
            />
            <div className="fields-two">
              <TextArea
                label="How to tell"
                value={cause.tell}
                onChange={(tell) => set({ tell })}
                problem={problem("tell")}
              />
              <TextArea
                label="Fix that worked"
                value={cause.fix}
                onChange={(fix) => set({ fix })}
                problem={problem("fix")}
              />
            </div>
            <div className="fields-two">
              <TextField
                label="Caution"
                optional
                value={cause.caution}
                onChange={(caution) => set({ caution })}
                problem={problem("caution")}
              />
              <TextField
                label="Source of this cause"
                optional
                value={cause.source}
                onChange={(source) => set({ source })}
                problem={problem("source")}
              />
            </div>
          </>
        );
      }}
    </EntryList>
  );
}
