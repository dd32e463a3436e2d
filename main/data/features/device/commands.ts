import { SillbookError } from "#shared-lib/errors.ts";
import type { Handlers } from "../../context.ts";
import { newIdentifier } from "../../identifier.ts";
import { dropDraftSql, findCompanySql, keepDraftSql } from "./device.sql.ts";

export const chosenPersonKey = "person.chosen";

export const deviceCommands: Handlers<
  "device.choosePerson" | "company.start" | "company.change" | "draft.keep" | "draft.drop" | "setting.write"
> = {
  "device.choosePerson"(context, { personId }) {
    context.records.find("person", personId);
    context.device.write(chosenPersonKey, personId);
    return { personId };
  },

  "company.start"(context, { companyName, personName, role, telephone }) {
    if (context.store.get(findCompanySql)) {
      throw new SillbookError(
        "state-refused",
        "The company is already entered. Change its name in Settings.",
      );
    }
    const personId = newIdentifier();
    context.records.signAs(personId);
    const startScreen = role === "engineer" ? "find" : role === "team lead" ? "review" : "desk";
    context.records.insert(
      "person",
      { name: personName, role, telephone, onDuty: true, startScreen, active: true },
      personId,
    );
    const company = context.records.insert("company", { name: companyName });
    context.device.write(chosenPersonKey, personId);
    return { companyId: company.id, personId };
  },

  "company.change"(context, { name }) {
    const company = context.store.get<{ id: string }>(findCompanySql);
    if (!company) throw new SillbookError("state-refused", "The company is not entered yet.");
    context.records.update("company", context.records.find("company", company.id), { name });
    return { companyId: company.id };
  },

  "draft.keep"(context, { key, value }) {
    context.store.run(keepDraftSql, { key, value: JSON.stringify(value), keptAt: context.now });
    return { keptAt: context.now };
  },

  "draft.drop"(context, { key }) {
    context.store.run(dropDraftSql, { key });
    return {};
  },

  "setting.write"(context, { key, value }) {
    context.device.write(`setting.${key}`, value);
    return {};
  },
};
