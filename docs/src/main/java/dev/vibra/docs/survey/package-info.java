/**
 * The runnable survey: a folder with a machine description and recordings in, a printed summary and three files out.
 * Start at {@link dev.vibra.docs.survey.SurveyCommand}; the folder and its files are described on the project's own
 * survey page. Exit code 64 for wrong use follows the {@code sysexits} convention of 4.3BSD.
 */
package dev.vibra.docs.survey;
