package dev.vibra.docs.survey.output;

import dev.vibra.docs.survey.input.Problem;
import dev.vibra.score.Scorecard;
import java.util.List;

/**
 * A scorecard with what is known of the folders it is from.
 *
 * @param card the scorecard
 * @param problems what was wrong in the folders
 * @param run digest of inputs, options and version
 */
public record ScoreRecord(Scorecard card, List<Problem> problems, String run) {}
