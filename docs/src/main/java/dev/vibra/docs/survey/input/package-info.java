/**
 * Reading of a survey folder's {@code machine.json} with every error found, each named with file, line, field, value
 * and what is allowed. Start at {@link dev.vibra.docs.survey.input.MachineFile}. The syntax is JSON as of RFC 8259; the
 * field names are those of the project's own survey page.
 */
package dev.vibra.docs.survey.input;
