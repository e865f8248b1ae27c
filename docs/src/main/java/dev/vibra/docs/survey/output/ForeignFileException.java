package dev.vibra.docs.survey.output;

import java.io.IOException;

/** A file that is none of our own earlier results would have been overwritten; nothing was. */
public final class ForeignFileException extends IOException {
    private static final long serialVersionUID = 1;

    ForeignFileException(String message) {
        super(message);
    }
}
