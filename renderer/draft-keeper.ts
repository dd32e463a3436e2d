import type { SillbookError } from "#shared-lib/errors.ts";
import { asSillbookError } from "./as-sillbook-error.ts";
import { request } from "./shell-client.ts";
import { draftFailed, draftGone, draftKept } from "./use-saved-state.ts";

/** Long enough not to write on every letter, short enough that a crash costs a word at most. */
const restMilliseconds = 400;
const retryMilliseconds = 2000;

interface Reports {
  readonly kept: (at: string | null) => void;
  readonly failed: (error: SillbookError | undefined) => void;
}

/**
 * Sends the newest text of one draft, one request at a time and in order, so that a late "keep" never comes after a
 * "drop". Leaving a field, hiding the page and closing the screen send at once.
 */
export class DraftKeeper {
  readonly #key: string;
  readonly #reports: Reports;
  #waiting: { readonly value: unknown } | undefined;
  #timer: ReturnType<typeof setTimeout> | undefined;
  #chain: Promise<void> = Promise.resolve();
  #closed = false;
  /** Counts drops: a text of before a drop is never sent again after it. */
  #drops = 0;

  constructor(key: string, reports: Reports) {
    this.#key = key;
    this.#reports = reports;
    window.addEventListener("focusout", this.#flush);
    window.addEventListener("pagehide", this.#flush);
    document.addEventListener("visibilitychange", this.#flush);
  }

  keep(value: unknown): void {
    this.#waiting = { value };
    this.#wait(restMilliseconds);
  }

  /** A draft of an earlier time is shown: the foot of the column counts it as not saved yet. */
  adopt(keptAt: string): void {
    draftKept(this.#key, keptAt);
  }

  async drop(): Promise<void> {
    this.#waiting = undefined;
    this.#drops += 1;
    clearTimeout(this.#timer);
    this.#chain = this.#chain.then(async () => {
      try {
        await request("draft.drop", { key: this.#key });
        this.#report(undefined);
      } catch (reason) {
        this.#report(asSillbookError(reason));
      }
      draftGone(this.#key);
    });
    await this.#chain;
  }

  close(): void {
    this.#flush();
    this.#closed = true;
    window.removeEventListener("focusout", this.#flush);
    window.removeEventListener("pagehide", this.#flush);
    document.removeEventListener("visibilitychange", this.#flush);
  }

  readonly #flush = (event?: Event): void => {
    if (this.#waiting === undefined) return;
    clearTimeout(this.#timer);
    const { value } = this.#waiting;
    this.#waiting = undefined;
    // The last chance of a closing page: sent now, not after what is still on its way.
    const leaving = event?.type === "pagehide" || document.visibilityState === "hidden";
    const sent = leaving ? this.#send(value, true) : this.#chain.then(() => this.#send(value, false));
    this.#chain = Promise.all([this.#chain, sent]).then(() => undefined);
  };

  async #send(value: unknown, outlivesPage: boolean): Promise<void> {
    const drops = this.#drops;
    try {
      const { keptAt } = await request("draft.keep", { key: this.#key, value }, { outlivesPage });
      draftKept(this.#key, keptAt);
      this.#report(undefined);
      if (!this.#closed && drops === this.#drops) this.#reports.kept(keptAt);
    } catch (reason) {
      const error = asSillbookError(reason);
      draftFailed(error);
      this.#report(error);
      if (drops !== this.#drops || error.code === "input-invalid") return;
      // A newer text replaces the one that failed; an older one must not come back over it.
      this.#waiting ??= { value };
      this.#wait(retryMilliseconds);
    }
  }

  #wait(milliseconds: number): void {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(this.#flush, milliseconds);
  }

  #report(error: SillbookError | undefined): void {
    if (!this.#closed) this.#reports.failed(error);
  }
}
