/**
 * @typedef {object} Complaints
 * @property {string[]} securityViolations What a page tried that its content security policy forbids.
 * @property {string[]} consoleErrors Errors a page wrote to its console or did not catch.
 */

/**
 * Collects what the pages of a browser context complain about, from their first moment on.
 * @param {import("playwright").BrowserContext} context
 * @returns {Promise<Complaints>}
 */
export async function collectComplaints(context) {
  /** @type {Complaints} */
  const complaints = { securityViolations: [], consoleErrors: [] };
  await context.exposeBinding("__tellSecurityViolation", (_source, words) => {
    complaints.securityViolations.push(words);
  });
  await context.addInitScript(() => {
    document.addEventListener("securitypolicyviolation", (event) => {
      const { effectiveDirective, blockedURI, sourceFile, lineNumber } = event;
      // @ts-expect-error the binding above
      window.__tellSecurityViolation(`${effectiveDirective} ${blockedURI} at ${sourceFile}:${lineNumber}`);
    });
  });
  /** @param {import("playwright").Page} page */
  const follow = (page) => {
    page.on("console", (message) => {
      if (message.type() === "error") complaints.consoleErrors.push(message.text());
    });
    page.on("pageerror", (error) => complaints.consoleErrors.push(error.stack ?? error.message));
  };
  context.pages().forEach(follow);
  context.on("page", follow);
  return complaints;
}
