import {
  anyEntity,
  type Envelope,
  type OperationRequest,
  type ProgramEvent,
} from "#shared-lib/contract/operation.ts";
import type { InputOf, OperationName, OutputOf } from "#shared-lib/contract/operations.ts";
import { SillbookError } from "#shared-lib/errors.ts";

/** What the desktop preload exposes. The local-web shell has no such object; it answers over HTTP. */
export interface DesktopShell {
  readonly request: (request: OperationRequest) => Promise<Envelope>;
  /** Returns the function that ends the subscription. */
  readonly onEvent: (listener: (event: ProgramEvent) => void) => () => void;
  readonly openExternal: (url: string) => void;
  readonly print: () => void;
}

declare global {
  interface Window {
    readonly sillbook?: DesktopShell;
  }
}

let currentPersonId: string | undefined;

/** Every following request is made in the name of this person. */
export function writeAs(personId: string | null): void {
  currentPersonId = personId ?? undefined;
}

export interface RequestOptions {
  /** Lets a request outlive the page that sent it: for what is kept while the window closes. */
  readonly outlivesPage?: boolean;
}

/** The one way to ask the program for anything. Throws `SillbookError`, and nothing else. */
export async function request<Name extends OperationName>(
  name: Name,
  input: InputOf<Name>,
  options: RequestOptions = {},
): Promise<OutputOf<Name>> {
  const message: OperationRequest = {
    operation: name,
    input,
    ...(currentPersonId === undefined ? {} : { as: currentPersonId }),
  };
  const envelope = await send(message, options);
  if (!envelope.ok) {
    throw new SillbookError(envelope.error.code, envelope.error.message, envelope.error.details);
  }
  return envelope.value as OutputOf<Name>;
}

async function send(message: OperationRequest, options: RequestOptions): Promise<Envelope> {
  try {
    if (window.sillbook !== undefined) return await window.sillbook.request(message);
    askedUnheard ||= !hearing;
    const response = await fetch("/request", {
      method: "POST",
      headers: { "content-type": "application/json" },
      body: JSON.stringify(message),
      keepalive: options.outlivesPage === true,
    });
    const answer: unknown = await response.json();
    if (!isEnvelope(answer)) throw new TypeError(`The answer (status ${response.status}) is no envelope.`);
    return answer;
  } catch (error) {
    throw new SillbookError("shell-unreachable", undefined, { reason: String(error) });
  }
}

function isEnvelope(answer: unknown): answer is Envelope {
  if (typeof answer !== "object" || answer === null || !("ok" in answer)) return false;
  return answer.ok === true ? "value" in answer : "error" in answer;
}

const listeners = new Set<(event: ProgramEvent) => void>();
const connectionListeners = new Set<(connected: boolean) => void>();
let endSubscription: (() => void) | undefined;
let hearing = false;
/** Something was asked while no event could be heard: its answer may be older than what the program knows. */
let askedUnheard = false;

/** Calls `listener` for everything the program reports; returns the function that ends it. */
export function onProgramEvent(listener: (event: ProgramEvent) => void): () => void {
  listeners.add(listener);
  endSubscription ??= subscribe();
  return () => {
    listeners.delete(listener);
    if (listeners.size > 0) return;
    endSubscription?.();
    endSubscription = undefined;
  };
}

/** Calls `listener` when the event stream breaks and when it is back. */
export function onConnectionChange(listener: (connected: boolean) => void): () => void {
  connectionListeners.add(listener);
  return () => {
    connectionListeners.delete(listener);
  };
}

function tellAll(event: ProgramEvent): void {
  for (const listener of [...listeners]) listener(event);
}

function tellConnection(connected: boolean): void {
  for (const listener of [...connectionListeners]) listener(connected);
}

function subscribe(): () => void {
  if (window.sillbook !== undefined) return window.sillbook.onEvent(tellAll);
  const source = new EventSource("/events");
  source.onmessage = (message: MessageEvent<string>) => {
    tellAll(JSON.parse(message.data) as ProgramEvent);
  };
  let wasBroken = false;
  source.onerror = () => {
    wasBroken = true;
    hearing = false;
    tellConnection(false);
  };
  source.onopen = () => {
    hearing = true;
    if (wasBroken) tellConnection(true);
    const mayHaveMissed = wasBroken || askedUnheard;
    wasBroken = false;
    askedUnheard = false;
    if (!mayHaveMissed) return;
    // What the program reported before the stream was open, or while it was broken, is lost: every screen reads again.
    tellAll({
      kind: "changed",
      records: [{ entity: anyEntity, id: anyEntity }],
      at: new Date().toISOString(),
    });
  };
  return () => {
    hearing = false;
    source.close();
  };
}

/** Opens an address outside the program; main decides which addresses are allowed. */
export function openExternal(url: string): void {
  if (window.sillbook !== undefined) window.sillbook.openExternal(url);
  else window.open(url, "_blank", "noopener,noreferrer");
}

export function printPage(): void {
  if (window.sillbook !== undefined) window.sillbook.print();
  else window.print();
}
