import { letteringWidth } from "./text-width.ts";

/** One contact, or several taken together, of the safety chain in its own order. A picture, simplified. */
export interface ChainContact {
  readonly id: string;
  readonly words: string;
  readonly bridged: boolean;
}

export interface MiniChainLayout {
  readonly width: number;
  readonly height: number;
  readonly lineY: number;
  readonly wordY: number;
  readonly contacts: readonly {
    readonly contact: ChainContact;
    readonly left: number;
    readonly right: number;
    readonly middle: number;
  }[];
}

const halfContact = 11;

/** Contacts share the width by their words; the line is at least as long as the words need. */
export function miniChainLayout(
  contacts: readonly ChainContact[],
  given: number,
  textSize: number,
): MiniChainLayout {
  const widths = contacts.map(
    (contact) =>
      Math.max(halfContact * 2 + 8, letteringWidth(contact.words, textSize, contact.bridged)) +
      textSize * 0.8,
  );
  const needed = widths.reduce((sum, width) => sum + width, 0) + 12;
  const width = Math.max(given, Math.ceil(needed));
  const spare = contacts.length > 0 ? Math.min(24, (width - needed) / contacts.length) : 0;
  const lineY = 30;
  let x = 6;
  const placed = contacts.map((contact, index) => {
    const room = (widths[index] ?? 0) + spare;
    const middle = x + room / 2;
    x += room;
    return { contact, middle, left: middle - halfContact, right: middle + halfContact };
  });
  return {
    width: Math.ceil(Math.max(x + 6, 40)),
    height: Math.ceil(lineY + textSize * 1.9),
    lineY,
    wordY: lineY + textSize * 1.45,
    contacts: placed,
  };
}

export function miniChainSentence(contacts: readonly ChainContact[]): string {
  const bridged = contacts.filter((contact) => contact.bridged).map((contact) => contact.words);
  const order = contacts.map((contact) => contact.words).join(", ");
  const said = bridged.length === 0 ? "No bridge." : `Bridge across ${bridged.join(" and ")}.`;
  return `Safety chain, simplified: ${order}. ${said}`;
}
