/**
 * The page runner: every Markdown page of the documentation is one JShell session, and what a page says a snippet gives
 * is compared with what it gives. Start at {@link dev.vibra.docs.pages.PageRunner}; {@code PagesTest} runs the pages of
 * the repository, {@code PageRunnerTest} runs hostile ones against the runner itself. Fences follow CommonMark 0.31,
 * section 4.5; the default imports are those of the JShell tool.
 */
package dev.vibra.docs.pages;
