import { randomBytes } from "node:crypto";

/** More browsers than one office has; the oldest makes room. */
const sessionLimit = 64;

/** The browsers that were let in, each known by a cookie that ends with the browser or with this program. */
export class BrowserSessions {
  readonly #sessions = new Set<string>();
  readonly #cookieName: string;

  /** @param port cookies ignore ports, so two programs on one machine need two names */
  constructor(port: number) {
    this.#cookieName = `sillbook_${port}`;
  }

  /** Lets a browser in. @returns the value of its Set-Cookie header. */
  begin(): string {
    const session = randomBytes(32).toString("hex");
    this.#sessions.add(session);
    for (const oldest of this.#sessions) {
      if (this.#sessions.size <= sessionLimit) break;
      this.#sessions.delete(oldest);
    }
    return `${this.#cookieName}=${session}; Path=/; HttpOnly; SameSite=Strict`;
  }

  /** @param cookieHeader of a request */
  knows(cookieHeader: string | undefined): boolean {
    return (cookieHeader ?? "").split(";").some((pair) => {
      const [name, value] = pair.trim().split("=", 2);
      return name === this.#cookieName && value !== undefined && this.#sessions.has(value);
    });
  }
}
