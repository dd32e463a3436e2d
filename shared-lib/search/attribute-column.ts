import { grownInt32 } from "./growable.ts";

/** Documents whose attribute holds one of `anyOf`; with `orUnset` also those that hold nothing ("fits every lift"). */
export interface AttributeFilter {
  readonly anyOf: readonly string[];
  readonly orUnset?: boolean;
}

const separator = "\u0000";

/**
 * One attribute of all documents. A document may hold several values (a fault note fits two controller families);
 * each distinct combination has a number, so that a filter is worked out once per combination, not per document.
 */
export class AttributeColumn {
  readonly #combinations: (readonly string[])[] = [];
  readonly #numbers = new Map<string, number>();
  #cells = new Int32Array(256);

  /** Combinations in the order of their numbers; for the snapshot. */
  get combinations(): readonly (readonly string[])[] {
    return this.#combinations;
  }

  set(document: number, value: string | readonly string[] | undefined): void {
    this.#cells = grownInt32(this.#cells, document + 1);
    this.#cells[document] =
      typeof value === "string" ? this.#numberOf(value, value) : this.#numberOfSeveral(value);
  }

  #numberOfSeveral(values: readonly string[] = []): number {
    const combination = [...new Set(values)].sort();
    return this.#numberOf(combination.join(separator), combination);
  }

  #numberOf(name: string, values: string | readonly string[]): number {
    const known = this.#numbers.get(name);
    if (known !== undefined) {
      return known;
    }
    const number = this.#combinations.length;
    this.#numbers.set(name, number);
    this.#combinations.push(name === "" ? [] : typeof values === "string" ? [values] : values);
    return number;
  }

  /** The number of the combination a document holds. */
  cell(document: number): number {
    return this.#cells[document] as number;
  }

  valuesOf(document: number): readonly string[] {
    return this.#combinations[this.cell(document)] ?? [];
  }

  /** The cells of the first `count` documents. */
  cells(count: number): Int32Array<ArrayBuffer> {
    return this.#cells.slice(0, count);
  }

  static restore(
    combinations: readonly (readonly string[])[],
    cells: Int32Array<ArrayBuffer>,
  ): AttributeColumn {
    const column = new AttributeColumn();
    for (const [number, combination] of combinations.entries()) {
      column.#combinations.push(combination);
      column.#numbers.set(combination.join(separator), number);
    }
    column.#cells = cells;
    return column;
  }

  /** For each combination number 1 where the filter lets it pass. */
  passing(filter: AttributeFilter): Uint8Array {
    const wanted = new Set(filter.anyOf);
    return Uint8Array.from(this.#combinations, (values) =>
      values.some((value) => wanted.has(value)) || (values.length === 0 && filter.orUnset === true) ? 1 : 0,
    );
  }
}
