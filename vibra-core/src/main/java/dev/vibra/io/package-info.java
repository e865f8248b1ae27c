/**
 * Recordings read from files, streams, channels and buffers, and written to files; the only package of the library that
 * touches any. Start at {@link dev.vibra.io.Recordings}, or at {@link dev.vibra.io.RecordingInput} for what isn't a
 * file, for several channels, a range or blocks. WAV follows the RIFF form of the Multimedia Programming Interface 1.0
 * (1991) with the extensible header and the 64-bit sizes of EBU Tech 3306; CSV follows RFC 4180 with the allowances
 * named at {@link dev.vibra.io.Recordings}.
 *
 * @serial exclude
 */
package dev.vibra.io;
