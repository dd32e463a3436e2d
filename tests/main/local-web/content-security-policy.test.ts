import { expect, test } from "vitest";
import { contentSecurityPolicy, fileHeaders } from "../../../main/local-web/content-security-policy.ts";

test("the policy allows what the screens need and nothing else", () => {
  expect(contentSecurityPolicy("abc").split("; ")).toEqual([
    "default-src 'none'",
    "script-src 'self'",
    "style-src 'self' 'nonce-abc'",
    "img-src 'self' data: blob:",
    "font-src 'self'",
    "connect-src 'self'",
    "base-uri 'none'",
    "form-action 'none'",
    "frame-ancestors 'none'",
  ]);
});

test("no policy ever allows inline or evaluated code, or another origin", () => {
  expect(contentSecurityPolicy("abc")).not.toMatch(/unsafe|\*|https?:/);
});

test("every file is sent with the policy and without a referrer", () => {
  expect(fileHeaders("abc")).toMatchObject({
    "Content-Security-Policy": contentSecurityPolicy("abc"),
    "Referrer-Policy": "no-referrer",
    "X-Content-Type-Options": "nosniff",
  });
});
