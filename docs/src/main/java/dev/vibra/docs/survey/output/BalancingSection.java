package dev.vibra.docs.survey.output;

import dev.vibra.balance.Correction;
import dev.vibra.balance.Corrections;
import dev.vibra.balance.JobRecord;
import dev.vibra.balance.ResidualUnbalance;
import dev.vibra.balance.Verification;
import dev.vibra.balance.placement.PositionedMass;
import dev.vibra.balance.vector.PlacedMass;
import dev.vibra.internal.Digits;
import dev.vibra.survey.BalancingSurvey;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/** The section of the report on a balancing job: the record from the first run to the proof. */
final class BalancingSection {
    private final Html html;
    private final BalancingSurvey balancing;

    private BalancingSection(Html html, BalancingSurvey balancing) {
        this.html = html;
        this.balancing = balancing;
    }

    static void write(Html html, BalancingSurvey balancing, List<FigureSpool.Kept> figures) {
        BalancingSection section = new BalancingSection(html, balancing);
        html.element("h2", html.say("balancing.title"));
        if (balancing.corrections().isEmpty()) {
            html.list(balancing.omissions().stream().map(one -> one.part() + ": " + one.reason()).toList());
            return;
        }
        Corrections corrections = balancing.corrections().get();
        JobRecord job = balancing.toRecord().orElseThrow();
        html.element("p", html.say("balancing.convention", job.convention()));
        section.cautions(corrections);
        figures.forEach(figure -> html.figure(figure, figure.description()));
        section.runs(job);
        section.coefficients(job);
        section.corrections(corrections);
        section.vibration(corrections);
        section.unbalance(corrections);
        section.doubts(corrections);
        section.next();
        html.element("h3", html.say("balancing.reliance")).list(job.reliance());
    }

    private void cautions(Corrections corrections) {
        html.open("div", "error").list(corrections.cautions().stream().map(one -> one.text()).toList()).close("div");
    }

    private void runs(JobRecord job) {
        html.element("h3", html.say("balancing.runs")).open("table", "runs");
        List<String> head = new ArrayList<>(List.of(html.say("balancing.run"), html.say("balancing.masses")));
        JobRecord.ReadingEntry unit = job.runs().get(0).readings().get(0);
        job.runs().get(0).readings().forEach(one -> head.add(one.sensor()));
        html.row("th", head.toArray(String[]::new));
        for (JobRecord.RunEntry run : job.runs()) {
            List<String> cells = new ArrayList<>(List.of(run.name(), run.masses().isEmpty() ? html.say("balancing.no-mass")
                    : String.join("; ", run.masses().stream().map(this::mass).toList())));
            run.readings().forEach(one -> cells.add(html.say("balancing.vector", PlainNumber.forPeople(one.amplitude()),
                    angle(one.phaseDegrees()))));
            html.row("td", cells.toArray(String[]::new));
        }
        html.close("table").element("p", "quiet", html.say(balancing.job().runout().isEmpty() ? "balancing.readings"
                : "balancing.readings-without-runout", unit.unit(), unit.detector()));
    }

    private String mass(JobRecord.MassEntry entry) {
        PlacedMass mass = entry.mass();
        return html.say(mass.radiusMillimetres().isEmpty() ? "balancing.mass" : "balancing.mass-at-radius", entry.plane(),
                PlainNumber.forPeople(mass.grams()), angle(mass.angleDegrees()),
                PlainNumber.of(mass.radiusMillimetres().orElse(0)));
    }

    private static String angle(double degrees) {
        String text = String.format(Locale.ROOT, "%.1f°", degrees);
        return "360.0°".equals(text) ? "0.0°" : text;
    }

    private void coefficients(JobRecord job) {
        JobRecord.ReadingEntry unit = job.runs().get(0).readings().get(0);
        html.element("h3", html.say("balancing.coefficients")).open("table", "narrow");
        html.row("th", html.say("balancing.sensor"), html.say("balancing.plane"), html.say("balancing.per-gram", unit.unit(),
                unit.detector()), html.say("balancing.phase"));
        job.coefficients().forEach(one -> html.row("td", one.sensor(), one.plane(),
                PlainNumber.forPeople(one.amplitudePerGram()), angle(one.phaseDegrees())));
        double condition = balancing.corrections().orElseThrow().conditionNumber();
        html.close("table").element("p", "quiet", html.say("balancing.condition-number",
                condition < Double.POSITIVE_INFINITY ? PlainNumber.forPeople(condition) : html.say("balancing.singular")));
    }

    private void corrections(Corrections corrections) {
        html.element("h3", html.say("balancing.to-add")).element("p", html.say("balancing.add-to", corrections.addedTo()));
        html.open("table", "whole").row("th", html.say("balancing.plane"), html.say("balancing.mass-head"),
                html.say("balancing.angle"), html.say("balancing.radius"), html.say("balancing.positions"),
                html.say("balancing.ellipse"));
        for (Correction one : corrections.list()) {
            html.row("td", one.plane(), PlainNumber.forPeople(one.mass().grams()) + " g",
                    angle(one.mass().angleDegrees()), one.mass().radiusMillimetres().isPresent()
                            ? PlainNumber.of(one.mass().radiusMillimetres().getAsDouble()) + " mm"
                            : html.say("balancing.trial-radius"),
                    String.join(" + ", one.split().stream().map(PositionedMass::toString).toList()),
                    corrections.uncertainty().map(u -> u.ofCorrection(one.plane()))
                            .map(e -> html.say("balancing.ellipse-axes", PlainNumber.withPlacesOf(e.major(), e.major()),
                                    PlainNumber.withPlacesOf(e.minor(), e.major())))
                            .orElse(html.say("balancing.no-scatter")));
        }
        html.close("table");
    }

    private void vibration(Corrections corrections) {
        Optional<Verification> proof = balancing.verification();
        html.element("h3", html.say("balancing.vibration")).open("table", "whole");
        html.row("th", html.say("balancing.sensor"), html.say("balancing.before"), html.say("balancing.predicted"),
                proof.isPresent() ? html.say("balancing.after") : "");
        for (int i = 0; i < corrections.places().size(); i++) {
            int row = i;
            html.row("td", corrections.places().get(i), corrections.present().get(i).toString(),
                    proof.map(one -> one.predicted().get(row)).orElse(corrections.predicted().get(i)).toString(),
                    proof.map(one -> one.after().get(row).toString()).orElse(""));
        }
        html.close("table");
    }

    private void unbalance(Corrections corrections) {
        if (corrections.presentUnbalance().isEmpty()) {
            return;
        }
        html.element("h3", html.say("balancing.unbalance")).open("table", "whole");
        html.row("th", html.say("balancing.plane"), html.say("balancing.before"), balancing.verification().isPresent()
                ? html.say("balancing.residual") : "", html.say("balancing.permissible"));
        List<ResidualUnbalance> residual = balancing.verification().map(Verification::residualUnbalance)
                .orElse(List.of());
        for (int j = 0; j < corrections.presentUnbalance().size(); j++) {
            ResidualUnbalance before = corrections.presentUnbalance().get(j);
            html.row("td", before.plane(), gramMillimetres(before.gramMillimetres()),
                    residual.isEmpty() ? "" : gramMillimetres(residual.get(j).gramMillimetres()),
                    gramMillimetres(before.permissibleGramMillimetres()));
        }
        for (ResidualUnbalance one : balancing.verification().map(Verification::bearingUnbalance).orElse(List.of())) {
            html.row("td", one.plane(), "", gramMillimetres(one.gramMillimetres()),
                    gramMillimetres(one.permissibleGramMillimetres()));
        }
        html.close("table");
        balancing.tolerance().ifPresent(one -> html.element("p", html.say("balancing.tolerance", one, one.allocation())));
        List<String> verdicts = new ArrayList<>();
        corrections.presentGrade().ifPresent(one -> verdicts.add(html.say("balancing.grade-before", one)));
        balancing.verification().ifPresent(one -> verdicts.add(html.say("balancing.final-run", one)));
        html.list(verdicts);
    }

    private static String gramMillimetres(double value) {
        return Digits.significant(value, 4) + " g·mm";
    }

    private static String gramMillimetres(OptionalDouble value) {
        return value.isPresent() ? gramMillimetres(value.getAsDouble()) : "";
    }

    private void doubts(Corrections corrections) {
        List<String> doubts = new ArrayList<>();
        corrections.remarks().forEach(one -> doubts.add(html.say("point.doubt", one)));
        balancing.verification().ifPresent(one -> one.remarks().forEach(remark -> doubts.add(html.say("point.doubt", remark))));
        if (!doubts.isEmpty()) {
            html.element("h3", html.say("balancing.doubts")).list(doubts);
        }
    }

    private void next() {
        balancing.trim().ifPresent(trim -> {
            html.element("h3", html.say("balancing.trim")).element("p", html.say("balancing.add-to", trim.addedTo()));
            html.list(trim.list().stream().map(Correction::toString).toList());
        });
    }
}
