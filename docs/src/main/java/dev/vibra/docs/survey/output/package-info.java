/**
 * What a survey leaves behind: printed summary, {@code results.json}, {@code results.csv} and {@code report.html}.
 * Start at {@link dev.vibra.docs.survey.output.OutputFolder}, which writes the files all together or not at all. JSON
 * follows RFC 8259 and CSV RFC 4180; field and descriptor names are those of the project's own survey page.
 */
package dev.vibra.docs.survey.output;
