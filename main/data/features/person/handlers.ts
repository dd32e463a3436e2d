import type { Person } from "#shared-lib/contract/person.ts";
import type { Handlers } from "../../context.ts";
import { listPeopleSql } from "../../people.sql.ts";
import { fromRow } from "../../record-store.ts";

export const personHandlers: Handlers<
  "person.list" | "person.add" | "person.change" | "person.handOverDuty"
> = {
  "person.list"(context) {
    const rows = context.store.all<Record<string, unknown>>(listPeopleSql);
    return { people: rows.map((row) => fromRow("person", row) as unknown as Person) };
  },

  "person.add"(context, fields) {
    return context.records.insert("person", fields);
  },

  "person.change"(context, { id, version, fields }) {
    return context.records.update("person", context.records.findAtVersion("person", id, version), fields);
  },

  "person.handOverDuty"(context, { from, to }) {
    const people = [];
    if (from && from !== to) {
      people.push(context.records.update("person", context.records.find("person", from), { onDuty: false }));
    }
    people.push(context.records.update("person", context.records.find("person", to), { onDuty: true }));
    return { people };
  },
};
