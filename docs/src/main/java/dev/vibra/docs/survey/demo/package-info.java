/**
 * The demonstration machine: an invented fan whose recordings are made by the library's own forward models. Start at
 * {@link dev.vibra.docs.survey.demo.DemoMachine}, which unpacks it as a survey folder. What was put in is written down
 * in the generator beside the tests, so that what the survey finds can be compared; the impact model follows J. Antoni,
 * R. B. Randall, <i>J. Vib. Acoust.</i> 125 (2003) 282-289.
 */
package dev.vibra.docs.survey.demo;
