/** What the tests of this module share. */
package dev.vibra.testing;
