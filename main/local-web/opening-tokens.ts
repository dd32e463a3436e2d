import { randomBytes } from "node:crypto";

/** Ten minutes: long enough to copy a printed address into a browser, short enough for a history that others read. */
export const tokenLifeMilliseconds = 10 * 60 * 1000;

/** One-time tokens for the opening address. Each lets one browser in, once, within its life. */
export class OpeningTokens {
  readonly #expiry = new Map<string, number>();
  readonly #now: () => number;

  /** @param now milliseconds on any steady clock */
  constructor(now: () => number = () => performance.now()) {
    this.#now = now;
  }

  issue(): string {
    this.#forgetExpired();
    const token = randomBytes(32).toString("hex");
    this.#expiry.set(token, this.#now() + tokenLifeMilliseconds);
    return token;
  }

  /** @returns whether the token was good; it no longer is. */
  redeem(token: string): boolean {
    this.#forgetExpired();
    return this.#expiry.delete(token);
  }

  #forgetExpired(): void {
    const now = this.#now();
    for (const [token, expiry] of this.#expiry) if (expiry <= now) this.#expiry.delete(token);
  }
}
