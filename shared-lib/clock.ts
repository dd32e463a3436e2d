/**
 * Hybrid logical clock (Kulkarni, Demirbas, Madappa, Avva, Leone 2014): a stamp is wall time, a counter for what
 * happens within the same millisecond or while the wall clock stands still or runs back, and the device.
 * Stamps compare as plain text. Contract:
 *  - stamps made by one clock always grow, whatever the wall clock does;
 *  - a stamp received from elsewhere moves the clock forward, unless it is further ahead of the wall clock than
 *    `farAhead`: such a stamp is refused and the clock stays (one wrong machine must not drag all others along).
 */
export interface ClockState {
  readonly wall: number;
  readonly counter: number;
}

export const farAhead = 60 * 60 * 1000;

/** Text of a stamp: "2026-11-24T10:42:00.000Z 0001 KTM-7f3a". The counter has four hexadecimal digits. */
export function formatStamp(state: ClockState, device: string): string {
  return `${new Date(state.wall).toISOString()} ${state.counter.toString(16).padStart(4, "0")} ${device}`;
}

export function parseStamp(stamp: string): { state: ClockState; device: string } | null {
  const match = /^(\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3}Z) ([0-9a-f]{4}) (\S+)$/.exec(stamp);
  if (!match) return null;
  const wall = Date.parse(match[1] ?? "");
  if (Number.isNaN(wall)) return null;
  return { state: { wall, counter: Number.parseInt(match[2] ?? "0", 16) }, device: match[3] ?? "" };
}

const lastCounter = 0xffff;

export function nextStamp(state: ClockState, wallNow: number): ClockState {
  if (wallNow > state.wall) return { wall: wallNow, counter: 0 };
  if (state.counter < lastCounter) return { wall: state.wall, counter: state.counter + 1 };
  return { wall: state.wall + 1, counter: 0 };
}

/** The clock after a stamp from elsewhere was seen; null when that stamp is too far ahead to be believed. */
export function receiveStamp(state: ClockState, received: ClockState, wallNow: number): ClockState | null {
  if (received.wall - wallNow > farAhead) return null;
  const newest =
    received.wall > state.wall || (received.wall === state.wall && received.counter > state.counter)
      ? received
      : state;
  return nextStamp(newest, wallNow);
}
