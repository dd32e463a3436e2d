import type { Bridge, Danger } from "#shared-lib/contract/bridge.ts";
import type { Landing } from "#shared-lib/contract/lift.ts";

/** What is open on a lift and stands above everything, with the number of its triangle: dangers first. */
export type OpenStrip =
  | { readonly kind: "danger"; readonly number: number; readonly danger: Danger }
  | { readonly kind: "bridge"; readonly number: number; readonly bridge: Bridge };

export function openStripsOf(register: {
  readonly bridges: readonly Bridge[];
  readonly dangers: readonly Danger[];
}): readonly OpenStrip[] {
  const dangers = register.dangers.filter((danger) => danger.clearedAt === null);
  const bridges = register.bridges.filter((bridge) => bridge.open);
  return [
    ...dangers.map((danger, i) => ({ kind: "danger", number: i + 1, danger }) as const),
    ...bridges.map((bridge, i) => ({ kind: "bridge", number: dangers.length + i + 1, bridge }) as const),
  ];
}

/** "the landing 6 door contact", "the governor contact". */
export function bridgeAcross(bridge: Pick<Bridge, "contact" | "landingMarking">): string {
  const { contact, landingMarking } = bridge;
  if (contact === "other contact of the chain") return "another contact of the chain";
  if (landingMarking === null) return `the ${contact}`;
  if (contact.startsWith("landing door")) {
    return `the landing ${landingMarking} ${contact.slice("landing ".length)}`;
  }
  return `the ${contact}, landing ${landingMarking}`;
}

const doorOf = (contact: Bridge["contact"]) =>
  contact === "car door contact" ? "car" : contact.startsWith("landing door") ? "landing" : null;

/** The open bridge across the other kind of door, beside which this contact is never bridged. */
export function otherDoorOpen<Open extends Pick<Bridge, "contact" | "open">>(
  contact: Bridge["contact"] | null,
  bridges: readonly Open[],
): Open | undefined {
  const door = contact === null ? null : doorOf(contact);
  if (door === null) return undefined;
  return bridges.find((bridge) => {
    const other = doorOf(bridge.contact);
    return bridge.open && other !== null && other !== door;
  });
}

export interface ChainPicture {
  readonly contacts: readonly string[];
  readonly bridgedAt: number;
}

const placeInChain: Readonly<Record<Bridge["contact"], string>> = {
  "pit stop switch": "stops",
  "car-top stop switch": "stops",
  "governor contact": "governor",
  "safety gear contact": "safety gear",
  "final limit switch": "limits",
  "buffer contact": "buffers",
  "slack rope contact": "slack rope",
  "car door contact": "car door",
  "landing door contact": "landing doors",
  "landing door lock": "landing doors",
  "other contact of the chain": "other",
};

const alwaysShown = ["stops", "governor", "limits", "car door", "landing doors"];
const orderOfChain = [
  "stops",
  "governor",
  "safety gear",
  "limits",
  "buffers",
  "slack rope",
  "other",
  "car door",
  "landing doors",
];

/** The chain as short words in a usual order, simplified; the landing door of the bridge stands on its own. */
export function chainPictureOf(
  bridge: Pick<Bridge, "contact" | "landingId">,
  landings: readonly Pick<Landing, "id" | "marking" | "level">[],
): ChainPicture {
  const bridged = placeInChain[bridge.contact];
  const words = orderOfChain.filter((word) => alwaysShown.includes(word) || word === bridged);
  const sorted = [...landings].sort((a, b) => a.level - b.level);
  const at = sorted.findIndex((landing) => landing.id === bridge.landingId);
  const own = sorted[at];
  if (bridged !== "landing doors" || own === undefined) {
    return { contacts: words, bridgedAt: words.indexOf(bridged) };
  }
  const before = rangeWords(sorted.slice(0, at));
  const contacts = [...words.slice(0, -1), ...before, own.marking, ...rangeWords(sorted.slice(at + 1))];
  return { contacts, bridgedAt: words.length - 1 + before.length };
}

function rangeWords(landings: readonly { readonly marking: string }[]): string[] {
  const first = landings[0];
  const last = landings.at(-1);
  if (first === undefined || last === undefined) return [];
  return [landings.length === 1 ? first.marking : `${first.marking}–${last.marking}`];
}
