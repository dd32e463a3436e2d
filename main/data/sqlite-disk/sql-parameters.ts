import type { SqlParameters, SqlValue } from "./sqlite-file.ts";

/** What a statement asks for: names in the order of their numbers, or how many unnamed values. */
export interface ParameterPlan {
  readonly names: readonly string[];
  readonly unnamed: number;
}

// In this order: text in quotes, names in quotes or brackets, comments, parameters, ends of statements, and whatever else
// is not blank. What stands in quotes or comments is no parameter.
const token =
  /'(?:[^']|'')*'|"(?:[^"]|"")*"|`(?:[^`]|``)*`|\[[^\]]*\]|--[^\n]*|\/\*[\s\S]*?(?:\*\/|$)|[:@$][A-Za-z_]\w*|\?\d*|;|[A-Za-z_]\w*|\S/g;

/** Finds the parameters of one statement. Throws if the text holds a second statement, which SQLite would silently skip. */
export function planParameters(sql: string): ParameterPlan {
  const names: string[] = [];
  let unnamed = 0;
  let ended = false;
  for (const [found] of sql.matchAll(token)) {
    if (found.startsWith("--") || found.startsWith("/*")) continue;
    if (found === ";") {
      ended = true;
      continue;
    }
    if (ended) throw new Error(`Only one statement can be run with values; use exec for several: ${sql}`);
    if (found.startsWith("?")) {
      if (found.length > 1) throw new Error(`Numbered parameters (${found}) are not used here: ${sql}`);
      unnamed += 1;
    } else if (/^[@$]\w/.test(found)) {
      throw new Error(`Parameters are written with a colon (:name), not ${found}: ${sql}`);
    } else if (/^:\w/.test(found) && !names.includes(found.slice(1))) {
      names.push(found.slice(1));
    }
  }
  if (names.length > 0 && unnamed > 0) throw new Error(`Named and unnamed parameters are mixed: ${sql}`);
  return { names, unnamed };
}

/**
 * The values in the order SQLite numbers them. Throws an error that names the parameter when one is missing, unknown or of
 * a kind that cannot be stored exactly (sql.js would store NULL without a word).
 */
export function arrangeParameters(
  plan: ParameterPlan,
  parameters: SqlParameters | undefined,
  sql: string,
): (number | string | Uint8Array | null)[] {
  if (isList(parameters)) {
    if (plan.names.length > 0 || parameters.length !== plan.unnamed) {
      throw new Error(`${parameters.length} values for ${describe(plan)}: ${sql}`);
    }
    return parameters.map((value, index) => storable(value, `number ${index + 1}`, sql));
  }
  if (plan.unnamed > 0) throw new Error(`No list of values for ${describe(plan)}: ${sql}`);
  const given: Readonly<Record<string, SqlValue>> = parameters ?? {};
  for (const name of Object.keys(given)) {
    if (!plan.names.includes(name)) throw new Error(`The statement has no parameter :${name}: ${sql}`);
  }
  return plan.names.map((name) => {
    if (!Object.hasOwn(given, name)) throw new Error(`No value for the parameter :${name}: ${sql}`);
    return storable(given[name], `:${name}`, sql);
  });
}

function isList(parameters: SqlParameters | undefined): parameters is readonly SqlValue[] {
  return Array.isArray(parameters);
}

function describe(plan: ParameterPlan): string {
  return plan.names.length > 0 ? `the named parameters ${plan.names.join(", ")}` : `${plan.unnamed} places`;
}

function storable(value: unknown, parameter: string, sql: string): number | string | Uint8Array | null {
  if (value === null || typeof value === "string" || value instanceof Uint8Array) return value;
  if (typeof value === "number" && Number.isFinite(value)) return value;
  if (typeof value === "bigint" && BigInt.asIntN(64, value) === value) {
    // sql.js binds a large integer as text, which SQLite turns back into an integer in an INTEGER column.
    const small = Number(value);
    return Number.isSafeInteger(small) ? small : value.toString();
  }
  const what = typeof value === "object" ? "an object" : String(value);
  throw new Error(`The parameter ${parameter} is ${what}, which cannot be stored: ${sql}`);
}
