package dev.vibra.diagnosis;

import dev.vibra.diagnosis.CountsWriter.View;
import dev.vibra.fault.Symptom;
import dev.vibra.symptom.Answer;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * The tree in which symptoms hang on one another beyond what the fault explains: the heaviest by information that two
 * have of each other given the fault.
 *
 * @see "N. Friedman, D. Geiger, M. Goldszmidt, Machine Learning 29 (1997) 131-163, procedure Construct-TAN"
 */
final class SymptomTree {
    /** Less information than this, in nats a machine, is chance. */
    private static final double LEAST = 0.005;

    private final List<Symptom> symptoms;
    private final double[][] information;

    SymptomTree(List<Symptom> symptoms, Map<String, List<View>> views) {
        this.symptoms = symptoms;
        this.information = new double[symptoms.size()][symptoms.size()];
        int all = views.values().stream().mapToInt(List::size).sum();
        views.values().forEach(list -> add(list, all));
    }

    private void add(List<View> views, int all) {
        int[][] letters = new int[symptoms.size()][views.size()];
        for (int i = 0; i < symptoms.size(); i++) {
            for (int k = 0; k < views.size(); k++) {
                Answer answer = views.get(k).answer(symptoms.get(i));
                letters[i][k] = answer.isMeasured() ? answer.isSeen() ? 1 : 0 : -1;
            }
        }
        for (int i = 0; i < letters.length; i++) {
            for (int j = 0; j < i; j++) {
                double nats = nats(letters[i], letters[j]) / all;
                information[i][j] += nats;
                information[j][i] += nats;
            }
        }
    }

    /** Information of two answers of each other, times the number of machines that gave both. */
    private static double nats(int[] one, int[] other) {
        double[][] both = new double[2][2];
        double sum = 0;
        for (int k = 0; k < one.length; k++) {
            if (one[k] >= 0 && other[k] >= 0) {
                both[one[k]][other[k]]++;
                sum++;
            }
        }
        double nats = 0;
        for (int a = 0; a < 2; a++) {
            for (int b = 0; b < 2; b++) {
                double row = both[a][0] + both[a][1];
                double column = both[0][b] + both[1][b];
                nats += both[a][b] > 0 ? both[a][b] * Math.log(both[a][b] * sum / (row * column)) : 0;
            }
        }
        return nats;
    }

    /** Each symptom with the one that it hangs on; roots are missing. */
    Map<String, String> parents() {
        Map<String, String> parents = new HashMap<>();
        boolean[] inTree = new boolean[symptoms.size()];
        inTree[0] = true;
        for (int count = 1; count < inTree.length; count++) {
            int from = -1;
            int to = -1;
            for (int i = 0; i < inTree.length; i++) {
                for (int j = 0; inTree[i] && j < inTree.length; j++) {
                    if (!inTree[j] && (to < 0 || information[i][j] > information[from][to])) {
                        from = i;
                        to = j;
                    }
                }
            }
            inTree[to] = true;
            if (information[from][to] > LEAST) {
                parents.put(symptoms.get(to).code(), symptoms.get(from).code());
            }
        }
        return parents;
    }
}
