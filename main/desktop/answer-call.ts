import type { Envelope } from "#shared-lib/contract/operation.ts";
import { failedEnvelope } from "../command-line/failed-envelope.ts";
import { isOperationRequest, requestFormMessage } from "../command-line/operation-request.ts";
import type { DataClient } from "../data/data-client.ts";
import { isExternalAddress } from "./app-address.ts";

/** What the desktop can do for a page. */
export interface CallServices {
  readonly data: Pick<DataClient, "request">;
  openExternal(address: string): Promise<void>;
  print(): Promise<void>;
}

/** Answers one call of the page. The message is from outside and is believed in nothing. */
export async function answerCall(
  message: unknown,
  { data, openExternal, print }: CallServices,
): Promise<Envelope> {
  const { call, request, address } = (typeof message === "object" && message !== null ? message : {}) as {
    call?: unknown;
    request?: unknown;
    address?: unknown;
  };
  switch (call) {
    case "request": {
      if (!isOperationRequest(request)) return failedEnvelope("input-invalid", requestFormMessage);
      const { operation, input, as } = request;
      return data.request({ operation, input, as });
    }
    case "open-external": {
      if (typeof address !== "string" || !isExternalAddress(address)) {
        return failedEnvelope(
          "input-invalid",
          "Only web pages (https) and mail addresses are opened outside.",
        );
      }
      await openExternal(address);
      return { ok: true, value: null };
    }
    case "print":
      await print();
      return { ok: true, value: null };
    default:
      return failedEnvelope("input-invalid", "The page asked for something this window does not know.");
  }
}
