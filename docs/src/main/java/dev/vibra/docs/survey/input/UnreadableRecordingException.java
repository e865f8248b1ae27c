package dev.vibra.docs.survey.input;

/** A recording can't be read or be turned into its unit; the message says why, without the name of the file. */
public final class UnreadableRecordingException extends RuntimeException {
    private static final long serialVersionUID = 1;

    UnreadableRecordingException(String message, Throwable cause) {
        super(message, cause);
    }
}
