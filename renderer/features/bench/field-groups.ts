import type { Field } from "#shared-lib/calculators/field.ts";

export interface FieldGroup {
  readonly key: string;
  /** undefined: fields without a group of their own. */
  readonly name: string | undefined;
  readonly fields: readonly Field[];
}

/** Fields as they follow one another, those of one group together under its name. */
export function fieldGroups(fields: readonly Field[]): readonly FieldGroup[] {
  const groups: { key: string; name: string | undefined; fields: Field[] }[] = [];
  for (const field of fields) {
    const last = groups.at(-1);
    if (last !== undefined && last.name === field.group) last.fields.push(field);
    else groups.push({ key: field.key, name: field.group, fields: [field] });
  }
  return groups;
}
