package dev.vibra.balance;

import dev.vibra.balance.influence.CoefficientErrors;
import dev.vibra.balance.influence.CorrectionSolver;
import dev.vibra.balance.influence.InfluenceCoefficients;
import dev.vibra.balance.influence.InfluenceFit;
import dev.vibra.balance.influence.Layout;
import dev.vibra.balance.placement.FittedMasses;
import dev.vibra.balance.placement.Fitting;
import dev.vibra.balance.placement.PlaneFitting;
import dev.vibra.balance.uncertainty.ReadingScatter;
import dev.vibra.balance.uncertainty.VectorCovariance;
import dev.vibra.balance.vector.Phasor;
import dev.vibra.balance.vector.PlacedMass;
import dev.vibra.evidence.Remark;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.IntStream;

/** What the runs of a job come to: coefficients, corrections, proof, and how far to trust them. */
final class JobAnalysis {
    private final Setup setup;
    private final RunLog log;
    private final DataDoubts doubts;

    JobAnalysis(Setup setup, RunLog log) {
        this.setup = setup;
        this.log = log;
        this.doubts = new DataDoubts(setup, log);
    }

    InfluenceCoefficients coefficients() {
        return setup.stored().map(stored -> stored.shownAs(setup.layout())).orElseGet(() ->
                InfluenceFit.of(setup.layout(), log.runsForCoefficients()).coefficients());
    }

    /** Says why corrections can't be worked out. */
    Optional<String> obstacle() {
        return obstacleToEffects().or(() -> setup.obstacle(with(coefficients()).solver()));
    }

    /** Says why it is not known what masses do at the sensors that count. */
    private Optional<String> obstacleToEffects() {
        return doubts.obstacle().or(() -> coefficients().obstacle(setup.rowWeights()));
    }

    private static void refuse(String reason) {
        throw new IllegalStateException(reason);
    }

    Corrections corrections() {
        Known known = known();
        return corrections(known, cancelling(known));
    }

    /** Masses of the corrections without all that they come to. */
    List<PlacedMass> masses() {
        Phasor[] masses = withoutRounding(cancelling(known()));
        return IntStream.range(0, masses.length).mapToObj(j -> setup.mass(j, masses[j])).toList();
    }

    private Phasor[] cancelling(Known known) {
        setup.obstacle(known.solver()).ifPresent(JobAnalysis::refuse);
        return setup.cancelling(known.solver(), known.present());
    }

    /** Corrections that were chosen in another way. */
    Corrections corrections(Phasor[] masses) {
        return corrections(known(), masses);
    }

    private Corrections corrections(Known known, Phasor[] exact) {
        Phasor[] masses = withoutRounding(exact);
        List<Correction> list = new ArrayList<>();
        Optional<ErrorPropagation> errors = ofPresentUnbalance(known);
        List<Remark> remarks = remarks(known, masses, errors);
        for (int j = 0; j < masses.length; j++) {
            PlacedMass mass = setup.mass(j, masses[j]);
            String plane = setup.layout().planes().get(j);
            list.add(new Correction(plane, mass, setup.split(j, mass)));
            setup.positions(j).filter(places -> !places.canHold(mass))
                    .ifPresent(places -> remarks.add(JobRemarks.unreached(plane, mass, places)));
        }
        return Corrections.of(setup, list, effect(known, masses, errors), remarks, addedTo());
    }

    /** A mass below a billionth of the largest is the rounding of doubles. */
    private Phasor[] withoutRounding(Phasor[] masses) {
        double largest = largestKilograms(masses);
        Phasor[] out = masses.clone();
        for (int j = 0; j < out.length; j++) {
            out[j] = masses[j].magnitude() / setup.layout().lever(j) > 1e-9 * largest ? masses[j] : Phasor.ZERO;
        }
        return out;
    }

    /** In kg, so that planes of different radius compare. */
    private double largestKilograms(Phasor[] masses) {
        double largest = 0;
        for (int j = 0; j < masses.length; j++) {
            largest = Math.max(largest, masses[j].magnitude() / setup.layout().lever(j));
        }
        return largest;
    }

    /** Masses on positions that were chosen already. */
    Corrections corrections(Phasor[] masses, FittedMasses fitted) {
        Known known = known();
        List<Correction> list = new ArrayList<>();
        for (int j = 0; j < masses.length; j++) {
            list.add(new Correction(setup.layout().planes().get(j), setup.mass(j, masses[j]), fitted.masses().get(j)));
        }
        Optional<ErrorPropagation> errors = ofPresentUnbalance(known);
        return Corrections.of(setup, list, effect(known, masses, errors), remarks(known, masses, errors), addedTo());
    }

    Fitting fitting(List<PlaneFitting> planes) {
        Known known = known();
        boolean limited = planes.stream().allMatch(PlaneFitting::isLimited);
        if (!limited) {
            setup.planesAlike(known.solver()).ifPresent(JobAnalysis::refuse); // they would fight with any mass
        }
        return Fitting.of(known.alpha(), known.present(), setup.rowWeights(), planes);
    }

    Verification verification() {
        Known known = known();
        Optional<Phasor[]> residual = setup.unbalanceOf(known.solver(), known.present());
        List<Remark> remarks = new ArrayList<>();
        JobRemarks.planesAlike(known.solver()).ifPresent(remarks::add);
        if (residual.isEmpty()) {
            remarks.add(JobRemarks.residualOpen(known.solver()));
        }
        Optional<ErrorPropagation> errors = residual.flatMap(r -> setup.scatter()).map(this::ofUnbalance);
        return Verification.of(setup, known.alpha(), known.solver(), log.vibrationBefore(log.last()),
                log.last().fitted(), new Verification.Proof(known.present(), residual, errors, remarks));
    }

    /** How far the coefficients may be off by the scatter of the readings; empty if none was told. */
    Optional<CoefficientErrors> coefficientErrors() {
        if (setup.stored().isPresent()) {
            return setup.storedErrors();
        }
        int rows = setup.layout().rows();
        int planes = setup.layout().planes().size();
        return setup.scatter().map(scatter -> {
            InfluenceCoefficients alpha = coefficients();
            VectorCovariance covariance = errors(scatter, rows * planes, known -> flat(known.alpha())).covariance();
            double[][] along = new double[rows][planes];
            double[][] across = new double[rows][planes];
            for (int i = 0; i < rows; i++) {
                for (int j = 0; j < planes; j++) {
                    Phasor direction = Phasor.polar(1, alpha.at(i, j).argument());
                    along[i][j] = deviation(covariance, i * planes + j, direction);
                    across[i][j] = deviation(covariance, i * planes + j, direction.times(new Phasor(0, 1)));
                }
            }
            return CoefficientErrors.of(setup.layout(), along, across);
        });
    }

    private static Phasor[] flat(InfluenceCoefficients alpha) {
        int planes = alpha.layout().planes().size();
        Phasor[] out = new Phasor[alpha.layout().rows() * planes];
        for (int k = 0; k < out.length; k++) {
            out[k] = alpha.at(k / planes, k % planes);
        }
        return out;
    }

    /** Standard deviation of one vector along a direction of length 1. */
    private static double deviation(VectorCovariance covariance, int vector, Phasor along) {
        int x = 2 * vector;
        return Math.sqrt(Math.max(0, covariance.at(x, x) * along.re() * along.re()
                + 2 * covariance.at(x, x + 1) * along.re() * along.im()
                + covariance.at(x + 1, x + 1) * along.im() * along.im()));
    }

    JobRecord toRecord() {
        RecordWriter writer = new RecordWriter(setup);
        boolean proof = log.endsWithFinalRun();
        Optional<String> obstacle = obstacle().or(() -> log.obstacle(proof ? List.of(log.last()) : List.of()));
        if (obstacle.isEmpty()) {
            return writer.write(log.runs(), coefficients(), corrections(), proof ? verification() : null);
        }
        boolean complete = !log.entries().isEmpty()
                && (setup.stored().isPresent() || log.trials().size() >= log.state().size());
        return complete ? writer.writeWithout(log.runs(), obstacle.get()) : writer.write(log.runs(), null, null, null);
    }

    private record Known(InfluenceCoefficients alpha, CorrectionSolver solver, Phasor[] present) {}

    /** What runs or stored coefficients tell, checked to be good for a correction. */
    private Known known() {
        obstacleToEffects().ifPresent(JobAnalysis::refuse);
        return with(coefficients());
    }

    /** Errors by the scatter told, or the usual one; empty if the planes act too much alike. */
    private Optional<ErrorPropagation> ofPresentUnbalance(Known known) {
        return Setup.tellsPlanesApart(known.solver()) ? Optional.of(ofUnbalance(setup.toldOrUsualScatter()))
                : Optional.empty();
    }

    private Corrections.Effect effect(Known known, Phasor[] masses, Optional<ErrorPropagation> errors) {
        Phasor[] predicted = Corrections.vibrationWith(known.alpha(), known.present(), masses);
        Optional<Phasor[]> unbalance = setup.unbalanceOf(known.solver(), known.present());
        Optional<CorrectionUncertainty> uncertainty = setup.scatter().flatMap(scatter -> unbalance.map(u ->
                CorrectionUncertainty.of(setup, masses, u, errors.orElseThrow(), predicted,
                        ofPredicted(scatter, masses))));
        return new Corrections.Effect(known.present(), predicted, unbalance, known.solver().conditionNumber(),
                uncertainty);
    }

    private List<Remark> remarks(Known known, Phasor[] masses, Optional<ErrorPropagation> errors) {
        List<Remark> out = new ArrayList<>(doubts.ofRuns(known.alpha()));
        JobRemarks.planesAlike(known.solver()).ifPresent(out::add);
        if (setup.ridge() > 0) {
            out.add(JobRemarks.regularised(setup.ridge()));
        }
        if (setup.scatter().isPresent() && setup.stored().isPresent() && setup.storedErrors().isEmpty()) {
            out.add(JobRemarks.takenAsExact());
        }
        if (known.solver().norm(known.present()) == 0) {
            out.add(JobRemarks.noVibration());
        }
        out.addAll(doubts.ofCorrections(masses));
        errors.ifPresent(e -> out.addAll(uncertain(masses, e)));
        return out;
    }

    /** Corrections that the scatter of the readings, told or usual, leaves open. */
    private List<Remark> uncertain(Phasor[] masses, ErrorPropagation errors) {
        Layout layout = setup.layout();
        VectorCovariance covariance = errors.covariance();
        double largest = largestKilograms(masses);
        List<Remark> out = new ArrayList<>();
        for (int j = 0; j < masses.length && largest > 0; j++) {
            double major = covariance.ellipse(j, masses[j], 0.95).major() / layout.lever(j);
            JobRemarks.uncertain(layout.planes().get(j), major / largest, setup.toldOrUsualScatter(),
                    setup.scatter().isEmpty(), setup.storedErrors().isPresent()).ifPresent(out::add);
        }
        return out;
    }

    private String addedTo() {
        if (log.isFirstState()) {
            return "to the rotor with the trial masses taken off";
        }
        return setup.trialsLeftOn() ? "to the rotor as it is now, with all masses of the earlier runs left on"
                : "to the rotor as it is after the final run, its corrections left on and the trial masses off";
    }

    /** Errors of the unbalance that the present vibration tells of. */
    private ErrorPropagation ofUnbalance(ReadingScatter scatter) {
        return errors(scatter, log.state().size(), JobAnalysis::unbalance);
    }

    /** Errors of the vibration that is left by masses that are what they are. */
    private VectorCovariance ofPredicted(ReadingScatter scatter, Phasor[] masses) {
        return errors(scatter, setup.layout().rows(), known -> Vectors.sum(known.present(),
                known.alpha().response(masses))).covariance();
    }

    private static Phasor[] unbalance(Known known) {
        return known.solver().cancelling(known.present()); // errors have no sign
    }

    private ErrorPropagation errors(ReadingScatter scatter, int vectors, Function<Known, Phasor[]> result) {
        ErrorPropagation ofReadings = ErrorPropagation.of(scatter, setup, log, vectors, changed -> {
            JobAnalysis other = new JobAnalysis(setup, changed);
            return result.apply(other.with(other.coefficients()));
        });
        return setup.storedErrors().map(s -> ofReadings.withErrorsOf(coefficients(), s,
                alpha -> result.apply(with(alpha)))).orElse(ofReadings);
    }

    private Known with(InfluenceCoefficients alpha) {
        return new Known(alpha, alpha.solver(setup.rowWeights()), log.presentVibration());
    }
}
