/**
 * What a page of ours may do, in both shells: nothing remote, no inline script, no form that leaves, no frame.
 * @param nonce for the one style element that the component library injects; new for each response
 */
export function contentSecurityPolicy(nonce: string): string {
  return [
    "default-src 'none'",
    "script-src 'self'",
    `style-src 'self' 'nonce-${nonce}'`,
    "img-src 'self' data: blob:",
    "font-src 'self'",
    "connect-src 'self'",
    "base-uri 'none'",
    "form-action 'none'",
    "frame-ancestors 'none'",
  ].join("; ");
}

/** Headers of every file of the program, in both shells. */
export function fileHeaders(nonce: string): Record<string, string> {
  return {
    "Content-Security-Policy": contentSecurityPolicy(nonce),
    "Cross-Origin-Opener-Policy": "same-origin",
    "Cross-Origin-Resource-Policy": "same-origin",
    "Permissions-Policy": "camera=(), display-capture=(), geolocation=(), microphone=(), usb=(), serial=()",
    "Referrer-Policy": "no-referrer",
    "X-Content-Type-Options": "nosniff",
  };
}
