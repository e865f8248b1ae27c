package dev.vibra.docs.pages;

/** What is wrong at one line of one page; prints as {@code spectrum.md:24: value is 3.5355, page says 3.60}. */
record Failure(String page, int line, String text) {
    /** Keeps the text on one line. */
    Failure {
        text = ExpectedText.collapse(text);
    }

    @Override
    public String toString() {
        return page + ":" + line + ": " + text;
    }
}
