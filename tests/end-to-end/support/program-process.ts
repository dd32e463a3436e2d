import type { ChildProcess } from "node:child_process";
import { once } from "node:events";

/** A started program with everything it printed, for failing tests to show. */
export class ProgramProcess {
  readonly child: ChildProcess;
  readonly #exit: Promise<number>;
  #printed = "";
  #onPrint: (() => void) | undefined;
  #ended = false;

  constructor(child: ChildProcess) {
    this.child = child;
    const keep = (chunk: Buffer): void => {
      this.#printed += chunk.toString("utf8");
      this.#onPrint?.();
    };
    child.stdout?.on("data", keep);
    child.stderr?.on("data", keep);
    this.#exit = once(child, "close").then(([code]) => {
      this.#ended = true;
      this.#onPrint?.();
      return (code as number | null) ?? -1;
    });
  }

  get printed(): string {
    return this.#printed;
  }

  /** Waits until what was printed matches; throws with all that was printed when the program ends before. */
  async waitFor(pattern: RegExp): Promise<RegExpExecArray> {
    for (;;) {
      const match = pattern.exec(this.#printed);
      if (match) return match;
      if (this.#ended) throw new Error(`The program ended before it printed ${pattern}:\n${this.#printed}`);
      await new Promise<void>((resume) => {
        this.#onPrint = resume;
      });
    }
  }

  /** @returns the exit code */
  ended(): Promise<number> {
    return this.#exit;
  }

  /** Asks the program to end in order, as Ctrl-C does, and waits for it. */
  async stop(): Promise<number> {
    if (!this.#ended) this.child.kill("SIGTERM");
    return this.#exit;
  }
}
