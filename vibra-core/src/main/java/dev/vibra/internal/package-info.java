/**
 * Shared argument checks, number formats and cutting of streams; not part of its public interface. Start at {@link
 * dev.vibra.internal.Require}. Other modules of the library use it, programs that embed the library should not: it may
 * change in any release.
 */
package dev.vibra.internal;
