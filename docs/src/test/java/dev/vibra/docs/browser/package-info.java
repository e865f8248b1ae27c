/**
 * The report in a real browser: a small client of the DevTools protocol of Chromium, and what must hold on the page.
 * Start at {@link dev.vibra.docs.browser.ReportInBrowser}; not part of the ordinary tests, since it needs a browser.
 */
package dev.vibra.docs.browser;
