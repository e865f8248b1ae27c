package dev.vibra.docs.pages;

import java.util.Optional;

/** A failure and, where the page can be brought up to date by the runner, the renewal that would do it. */
record Finding(Failure failure, Optional<Renewal> renewal) {}
