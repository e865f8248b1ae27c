/**
 * What a session in JShell has beside the library: the demonstration machine and figures of one line. Start at
 * {@link dev.vibra.docs.notebook.Notebook}; {@code java -jar vibra-survey.jar --jshell} prints the start-up file that
 * imports it with everything else.
 */
package dev.vibra.docs.notebook;
