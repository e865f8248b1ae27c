package dev.vibra.docs.survey.input;

import dev.vibra.descriptor.Descriptors;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Reads earlier values: those stated, and the names of the files of earlier results. */
final class BaselineReader {
    private BaselineReader() {}

    /** Reads value by descriptor by point. */
    static Map<String, Map<String, Double>> read(FieldReader fields, Ids points) {
        Map<String, Map<String, Double>> byPoint = new LinkedHashMap<>();
        fields.object("baseline").ifPresent(baseline -> {
            for (String point : baseline.names()) {
                Map<String, Double> values = new LinkedHashMap<>();
                baseline.part(point, object -> values(object, values));
                if (points.has(point)) {
                    byPoint.put(point, values);
                } else {
                    baseline.fault(point, points.rule());
                }
            }
            if (baseline.finish().faulty()) {
                fields.faults().add("baseline");
            }
        });
        return byPoint;
    }

    private static boolean values(FieldReader object, Map<String, Double> values) {
        for (String name : object.names()) {
            object.number(name, Plausible.NUMBER).ifPresent(value -> values.put(name, value));
            if (Descriptors.named(name).isEmpty()) {
                object.fault(name, "is not the name of a descriptor" + (object.problems().full() ? ""
                        : "; the nearest known name is \"" + NearestName.of(name,
                                Descriptors.standard().withTachometer().names()) + "\""));
            }
        }
        return true;
    }

    /** Reads the names of earlier results; one that leads out of the folder is left out. */
    static List<String> earlier(FieldReader fields) {
        List<String> names = fields.texts("earlier");
        names.stream().filter(name -> !PointReader.staysInside(name)).forEach(name -> fields.fault("earlier",
                "must be names of files inside the survey folder: \"" + name + "\""));
        return names.stream().filter(PointReader::staysInside).toList();
    }
}
