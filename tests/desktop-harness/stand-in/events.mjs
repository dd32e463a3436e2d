import { EventEmitter } from "node:events";
import { refuseUnknown } from "./refuse.mjs";

/** An event emitter that knows its events: listening for any other is refused. */
export class KnownEvents {
  #emitter = new EventEmitter();
  #name;
  #known;

  /** @param {string} name @param {readonly string[]} known */
  constructor(name, known) {
    this.#name = name;
    this.#known = known;
  }

  /** @param {string} event @param {(...args: any[]) => void} listener */
  on(event, listener) {
    refuseUnknown(`the event of ${this.#name}`, this.#known, [event]);
    this.#emitter.on(event, listener);
  }

  /** @param {string} event @param {(...args: any[]) => void} listener */
  once(event, listener) {
    refuseUnknown(`the event of ${this.#name}`, this.#known, [event]);
    this.#emitter.once(event, listener);
  }

  /** @param {string} event @param {...unknown} args */
  tell(event, ...args) {
    this.#emitter.emit(event, ...args);
  }

  /**
   * Emits an event whose default can be prevented.
   * @param {string} event
   * @param {object} [details]
   * @returns {boolean} whether it was prevented
   */
  tellPreventable(event, details = {}) {
    let prevented = false;
    const preventDefault = () => {
      prevented = true;
    };
    this.#emitter.emit(event, { ...details, preventDefault });
    return prevented;
  }
}
