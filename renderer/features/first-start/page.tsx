import { type FormEvent, useState } from "react";
import "./first-start.css";
import { type Role, roles } from "#shared-lib/words.ts";
import { Button } from "../../ui/button.tsx";
import { Choice } from "../../ui/choice.tsx";
import { ErrorNote } from "../../ui/error-note.tsx";
import { MarkShape } from "../../ui/mark.tsx";
import { PageTitle } from "../../ui/page-title.tsx";
import { TextField } from "../../ui/text-field.tsx";
import { useDraft } from "../../use-draft.ts";
import { useWrite } from "../../use-write.ts";

interface FirstStart {
  readonly companyName: string;
  readonly personName: string;
  readonly role: Role;
  readonly telephone: string;
}

const empty: FirstStart = { companyName: "", personName: "", role: "office", telephone: "" };
const fieldWords: { readonly [path: string]: string } = {
  companyName: "Company",
  personName: "Your name",
  telephone: "Telephone",
};

/** Asks for the company and who is sitting here; nothing else is needed to begin. */
export function FirstStartPage() {
  const draft = useDraft("firstStart", empty);
  const write = useWrite("company.start");
  const [asked, setAsked] = useState(false);
  const { value, ready } = draft;
  const change = (part: Partial<FirstStart>) => draft.set((before) => ({ ...before, ...part }));
  const missing = (text: string, words: string) => (asked && text.trim() === "" ? words : undefined);
  const start = async (event: FormEvent) => {
    event.preventDefault();
    setAsked(true);
    if (value.companyName.trim() === "" || value.personName.trim() === "") return;
    const result = await write.run(value);
    if (result.ok) await draft.drop();
  };
  return (
    <form className="stack first-start" onSubmit={(event) => void start(event)} noValidate>
      <PageTitle title="Begin">
        <span className="first-start-name">
          <MarkShape kind="flush" /> Sillbook
        </span>
      </PageTitle>
      <p>The job log and fault book of a lift company, kept on this machine. It begins empty.</p>
      <TextField
        label="Company"
        value={value.companyName}
        onChange={(companyName) => change({ companyName })}
        problem={missing(value.companyName, "Write the company’s name: it stands on every printed sheet.")}
        disabled={!ready}
        autoFocus
      />
      <TextField
        label="Your name"
        value={value.personName}
        onChange={(personName) => change({ personName })}
        problem={missing(value.personName, "Write your name: it is recorded with what you do.")}
        disabled={!ready}
      />
      <Choice
        label="Your work"
        options={roles.map((role) => ({ id: role, words: role }))}
        value={value.role}
        onChange={(role) => change({ role })}
      />
      <TextField
        label="Telephone"
        optional
        type="tel"
        value={value.telephone}
        onChange={(telephone) => change({ telephone })}
        disabled={!ready}
      />
      <ErrorNote error={write.error} fieldWords={(path) => fieldWords[path]} />
      <div className="buttons">
        <Button kind="first" type="submit" keys="Enter" pending={write.pending} disabled={!ready}>
          Begin
        </Button>
      </div>
      <p className="soft label">
        There are no accounts. The person is switched at the foot of the column. Others are added in Settings.
      </p>
    </form>
  );
}
