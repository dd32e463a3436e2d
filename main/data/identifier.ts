import { randomFillSync } from "node:crypto";

let lastTime = 0;
let sequence = 0;
/** Asking the system for eight bytes at a time would take longer than everything else here. */
const chance = Buffer.alloc(4096);
let chanceUsed = chance.length;

function takeChance(bytes: Buffer, at: number): void {
  const wanted = bytes.length - at;
  if (chanceUsed + wanted > chance.length) {
    randomFillSync(chance);
    chanceUsed = 0;
  }
  chance.copy(bytes, at, chanceUsed, chanceUsed + wanted);
  chanceUsed += wanted;
}

/**
 * UUID version 7 (RFC 9562 5.7): 48 bits of milliseconds, then a 12-bit sequence that grows within a millisecond
 * (RFC 9562 6.2 method 1), so that ids made here sort in the order in which they were made.
 */
export function newIdentifier(): string {
  const now = Date.now();
  if (now > lastTime) {
    lastTime = now;
    sequence = 0;
  } else {
    sequence += 1;
    if (sequence > 0xfff) {
      lastTime += 1;
      sequence = 0;
    }
  }
  const bytes = Buffer.alloc(16);
  takeChance(bytes, 8);
  bytes.writeUIntBE(lastTime, 0, 6);
  bytes.writeUInt16BE(0x7000 | sequence, 6);
  bytes[8] = ((bytes[8] ?? 0) & 0x3f) | 0x80;
  const hex = bytes.toString("hex");
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-${hex.slice(12, 16)}-${hex.slice(16, 20)}-${hex.slice(20)}`;
}
