package dev.vibra.docs.values;

import static dev.vibra.balance.Balancing.mass;
import static dev.vibra.balance.Balancing.v;

import dev.vibra.alarm.AlarmRule;
import dev.vibra.alarm.AlarmSetting;
import dev.vibra.alarm.Baseline;
import dev.vibra.alarm.BaselineRegister;
import dev.vibra.alarm.Change;
import dev.vibra.alarm.StatisticalRule;
import dev.vibra.balance.Balancing;
import dev.vibra.balance.BalancingJob;
import dev.vibra.balance.CorrectionUncertainty;
import dev.vibra.balance.Corrections;
import dev.vibra.balance.JobRecord;
import dev.vibra.balance.TrialMass;
import dev.vibra.balance.Verification;
import dev.vibra.balance.influence.CoefficientErrors;
import dev.vibra.balance.influence.InfluenceFit;
import dev.vibra.balance.phaseless.AmplitudeRuns;
import dev.vibra.balance.placement.PlaneFitting;
import dev.vibra.balance.placement.Positions;
import dev.vibra.balance.reading.RepeatedReading;
import dev.vibra.balance.reading.ScatterLimits;
import dev.vibra.balance.reading.SynchronousFit;
import dev.vibra.balance.reading.SynchronousSignal;
import dev.vibra.balance.rotor.Disc;
import dev.vibra.balance.rotor.FlexibleRotor;
import dev.vibra.balance.rotor.JeffcottRotor;
import dev.vibra.balance.rotor.Probe;
import dev.vibra.balance.rotor.RigidRotor;
import dev.vibra.balance.tolerance.Allocation;
import dev.vibra.balance.tolerance.BalanceErrors;
import dev.vibra.balance.tolerance.BalanceGrade;
import dev.vibra.balance.tolerance.BalanceTolerance;
import dev.vibra.balance.tolerance.GradeRow;
import dev.vibra.balance.tolerance.IndexMethod;
import dev.vibra.balance.tolerance.IndicatedGrade;
import dev.vibra.balance.uncertainty.ReadingScatter;
import dev.vibra.balance.uncertainty.VectorCovariance;
import dev.vibra.balance.vector.AngleSense;
import dev.vibra.balance.vector.PhaseSense;
import dev.vibra.balance.vector.Phasor;
import dev.vibra.balance.vector.PlacedMass;
import dev.vibra.balance.vector.RigidUnbalance;
import dev.vibra.balance.vector.StaticCouple;
import dev.vibra.balance.vector.VibrationVector;
import dev.vibra.bearing.kinematics.BearingGeometry;
import dev.vibra.bearing.kinematics.RotatingRing;
import dev.vibra.channel.ChannelSettings;
import dev.vibra.channel.EnvelopeRequest;
import dev.vibra.diagnosis.Decider;
import dev.vibra.diagnosis.FaultPattern;
import dev.vibra.diagnosis.LookAlike;
import dev.vibra.fault.Effort;
import dev.vibra.history.DescriptorHistory;
import dev.vibra.history.HistoryLimits;
import dev.vibra.history.MachineHistory;
import dev.vibra.history.Visit;
import dev.vibra.machine.Arrangement;
import dev.vibra.machine.BearingData;
import dev.vibra.machine.Belt;
import dev.vibra.machine.CoupledParts;
import dev.vibra.machine.DriveTrain;
import dev.vibra.machine.GearStage;
import dev.vibra.machine.MachineDescription;
import dev.vibra.machine.MachinePart;
import dev.vibra.machine.MeasuringPoint;
import dev.vibra.machine.Motor;
import dev.vibra.machine.RotorData;
import dev.vibra.measuring.BearingType;
import dev.vibra.measuring.Direction;
import dev.vibra.measuring.MachineLayout;
import dev.vibra.measuring.MeasuringPlan;
import dev.vibra.measuring.MountedResonance;
import dev.vibra.measuring.Mounting;
import dev.vibra.measuring.Orientation;
import dev.vibra.measuring.SensorAdvice;
import dev.vibra.point.PointSurvey;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Level;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.quantity.Unit;
import dev.vibra.rotation.OrderVector;
import dev.vibra.score.Label;
import dev.vibra.score.NotScored;
import dev.vibra.score.Scorecard;
import dev.vibra.severity.Coupling;
import dev.vibra.severity.Criterion;
import dev.vibra.severity.CriterionRequest;
import dev.vibra.severity.Machine;
import dev.vibra.severity.MachineKind;
import dev.vibra.severity.Measurement;
import dev.vibra.severity.MeasuringChain;
import dev.vibra.severity.Severity;
import dev.vibra.severity.Support;
import dev.vibra.severity.Verdict;
import dev.vibra.signal.Waveform;
import dev.vibra.simulation.Truth;
import dev.vibra.speedrun.PointRun;
import dev.vibra.speedrun.ProbePair;
import dev.vibra.speedrun.ProbePairRun;
import dev.vibra.speedrun.RunModel;
import dev.vibra.speedrun.SpeedRun;
import dev.vibra.speedrun.SpeedSweep;
import dev.vibra.speedrun.TurningSense;
import dev.vibra.survey.MachineSurvey;
import dev.vibra.survey.Survey;
import dev.vibra.survey.UnexplainedLevel;
import dev.vibra.symptom.Answer;
import dev.vibra.symptom.Site;
import dev.vibra.synthesis.ImpactTrain;
import dev.vibra.synthesis.SpeedProfile;
import dev.vibra.synthesis.Synthesis;
import dev.vibra.trend.ChangePoint;
import dev.vibra.trend.Prognosis;
import dev.vibra.trend.Readings;
import dev.vibra.trend.Trend;
import dev.vibra.trend.TrendSettings;
import dev.vibra.uncertainty.DecisionRule;
import dev.vibra.uncertainty.LevelUncertainty;
import java.io.Serializable;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;

/** Values of the modules for balancing and for standards, machines and surveys. */
class UpperStreamsTest extends ValueStreamChecks {
    private static final RotationSpeed SPEED = RotationSpeed.ofHertz(25);
    private static final Band BAND = Band.of(10, 1000);

    @Override
    Set<String> modules() {
        return Set.of("vibra-balance", "vibra-iso");
    }

    /**
     * No limit to a mass; planes that act alike; a standard uncertainty that is taken as certain; no chance at all. The
     * JDK takes any load factor for its maps.
     */
    @Override
    Set<String> mayBeNotFinite() {
        return Set.of("PlaneFitting.eachGrams", "PlaneFitting.allGrams", "Corrections.conditionNumber",
                "ChannelSettings.fullScale", "Contribution.degreesOfFreedom", "NamedLine.log10Probability",
                "HashMap.loadFactor");
    }

    /** Minus for a sideband below its line; seeds of noise. */
    @Override
    Set<String> mayBeNegative() {
        return Set.of("EnvelopeLine.sideband", "RunModel.seed");
    }

    @Override
    List<Serializable> samples() {
        List<Serializable> all = new ArrayList<>();
        all.addAll(vectorsAndRotors());
        all.addAll(job());
        all.addAll(standards());
        all.addAll(machine());
        all.addAll(survey());
        all.addAll(trend());
        all.addAll(run());
        return all;
    }

    private static List<Serializable> vectorsAndRotors() {
        Phasor one = new Phasor(3e-3, -4e-3);
        PlacedMass mass = PlacedMass.ofGrams(12, 30, AngleSense.AGAINST_ROTATION);
        VibrationVector vector = VibrationVector.of(5, 60, Unit.MM_PER_S, Detector.RMS, PhaseSense.LAG);
        BalanceTolerance tolerance = BalanceTolerance.of(BalanceGrade.of(6.3), 60, SPEED);
        var bearing = dev.vibra.balance.rotor.Bearing.of(-0.3, 1e8, 1e3);
        Probe probe = Probe.of(0.2, 90);
        Disc disc = Disc.cylinder(0.1, 20, 0.2, 0.05);
        AmplitudeRuns runs = AmplitudeRuns.of(5, 10, AngleSense.WITH_ROTATION).trialAt(0, 8).trialAt(120, 4.3589)
                .trialAt(240, 4.3589);
        return List.of(one, mass, mass.atRadius(160), vector, RigidUnbalance.inPlane(one, 0.4),
                StaticCouple.of(one, Phasor.ONE), dev.vibra.balance.vector.Convention.LAG_AGAINST_ROTATION,
                mass(10, 45), mass(10, 45).atRadius(150), v(5, 60), TrialMass.of(60, SPEED, 160), runs,
                runs.correction(), Positions.at(AngleSense.WITH_ROTATION, 10, 100, 200).without(3),
                PlaneFitting.on(Positions.of(6, AngleSense.WITH_ROTATION)).atMostEach(20).withSizes(5, 10),
                PlaneFitting.on(Positions.of(6, AngleSense.WITH_ROTATION)),
                Positions.of(6, AngleSense.WITH_ROTATION).split(mass).get(0),
                RepeatedReading.of(vector, vector), ScatterLimits.withDefaults(), SynchronousFit.withDefaults(),
                SynchronousSignal.of(vector, SPEED), bearing, disc, probe, JeffcottRotor.of(12, 40, 0.05),
                RigidRotor.of(60, 4, 2).with(bearing).with(probe).withPlane(0.3),
                FlexibleRotor.ofShaft(0.05, 2.1e11).with(disc).with(bearing).with(probe),
                BalanceGrade.of(2.5), tolerance, Allocation.byLever(0, 1, 0.4), tolerance.reachedBy(1000),
                BalanceErrors.none().withKnown(one).withSize(40), GradeRow.table().get(0),
                IndexMethod.of(one, Phasor.ONE), IndicatedGrade.of(Level.of(3, Unit.MM_PER_S, Detector.RMS), SPEED),
                ReadingScatter.of(0.02, 2),
                VectorCovariance.ofEffects(1, List.of(new Phasor[] {one}, new Phasor[] {Phasor.ONE})));
    }

    /** Two planes, a tolerance at the bearings, scatter, a final run; and the same with stored coefficients. */
    private static List<Serializable> job() {
        BalancingJob job = Balancing.inPlanes("L", "R").measuredAt("A", "B").at(SPEED).radius("L", 100).radius("R", 120)
                .positions("L", 12).positions("R", Positions.of(8, AngleSense.AGAINST_ROTATION)).rotor(100)
                .weight("A", 2).weight(SPEED, 1.5).scatter(ReadingScatter.of(0.02, 2).withFloor(0.01))
                .toTolerance(BalanceTolerance.of(BalanceGrade.of(6.3), 100, SPEED).allocated(Allocation.equalShares(2)))
                .alongTheAxis(0, 1000, 200, 800).initial(v(8.5, 60), v(6.5, 205))
                .trial("L", mass(10, 270), v(6, 125), v(4.5, 230)).trial("R", mass(12, 180), v(6, 35), v(10.5, 160))
                .finalRun(v(1, 20), v(0.8, 300));
        BalancingJob before = job.beforeFinalRun();
        Corrections corrections = before.corrections();
        CorrectionUncertainty uncertainty = corrections.uncertainty().orElseThrow();
        Verification proof = job.verification();
        JobRecord record = job.toRecord();
        InfluenceFit fit = InfluenceFit.of(job.layout(), before.runs());
        CoefficientErrors errors = before.coefficientErrors().orElseThrow();
        var fitted = before.fitting(PlaneFitting.on(Positions.of(6, AngleSense.WITH_ROTATION)),
                PlaneFitting.on(Positions.of(6, AngleSense.WITH_ROTATION))).leastSquares();
        BalancingJob stored = Balancing.inPlanes("fan").measuredAt("DE-H").in(Unit.UM, Detector.PEAK_TO_PEAK)
                .runout(v(2, 10)).regularised(0.01).trialsLeftOn();
        return List.of(job, stored, Balancing.inPlanes("L", "R").measuredAt("A", "B").at(SPEED).radius("L", 100)
                .radius("R", 120).withCoefficients(fit.coefficients(), errors), job.layout(),
                job.layout().sensors().get(0), job.runs().get(0), fit, fit.coefficients(), errors, corrections,
                corrections.list().get(0), corrections.presentUnbalance().get(0), uncertainty,
                uncertainty.ofPredicted().get(0), proof,
                proof.gradeProbability().orElseThrow(), proof.gradeReached().orElseThrow(), record,
                record.runs().get(0), record.runs().get(1).masses().get(0), record.runs().get(0).readings().get(0),
                record.coefficients().get(0), fitted);
    }

    private static Machine pump() {
        return Machine.of(MachineKind.PUMP).withRatedPowerKilowatts(37).withShaftHeightMillimetres(225)
                .withSupport(Support.RIGID).withSpeed(SPEED)
                .withCoupling(Coupling.FLEXIBLE, MachineKind.ELECTRIC_MOTOR);
    }

    private static Level level(double millimetresPerSecond) {
        return Level.of(millimetresPerSecond, Unit.MM_PER_S, Detector.RMS).within(BAND);
    }

    private static List<Serializable> standards() {
        Level level = level(3);
        Severity severity = Severity.of(pump());
        Verdict verdict = severity.judge(level);
        Criterion criterion = verdict.deciding().criterion();
        CriterionRequest request = CriterionRequest.of("ISO 20816-3:2022").withGroup("1");
        Severity beyond = Severity.of(Machine.of(MachineKind.PUMP).withRatedPowerKilowatts(1)
                .withSupport(Support.RIGID), request);
        Severity fan = Severity.of(Machine.of(MachineKind.FAN).withSupport(Support.RIGID),
                CriterionRequest.of("ISO 14694").withGroup("BV-1, in situ"));
        Baseline baseline = Baseline.of("full load", List.of(level(1.2), level(1.3)));
        LevelUncertainty uncertainty = LevelUncertainty.withDefaults().withSensor(5).withMounting(Mounting.STUD);
        AlarmRule rule = AlarmRule.of(level).withTrip(level(6));
        ChannelSettings channel = ChannelSettings.named("DE-H").withRule(rule);
        return List.of(pump(), Machine.unknown(), severity, fan, rule, rule.newEvaluator().snapshot(), channel,
                channel.at(25_600).snapshot(), new EnvelopeRequest(BAND, 1), severity.choice(),
                severity.choice().candidates().get(0),
                criterion, criterion.boundaries().get(0), criterion.operatingLimits().orElseThrow(), request,
                request.withDuty("x"), verdict, verdict.deciding(), Measurement.of(level)
                        .withChain(MeasuringChain.of(25_600, 4).withPart("sensor", Band.of(2, 5000))),
                MeasuringChain.of(25_600, 4), beyond.choice().outOfScope().orElseThrow(), uncertainty,
                uncertainty.of(level), LevelUncertainty.repetition(1, 1.1, 1.2), DecisionRule.guardedAcceptance(),
                AlarmSetting.of(criterion, baseline), baseline,
                BaselineRegister.empty().with("P", baseline).renewed("overhaul").with("P", baseline),
                Change.of(criterion, level(1.2), level), StatisticalRule.withDefaults(),
                StatisticalRule.withDefaults().withFalseAlarmProbability(0.01),
                MountedResonance.ofHertz(20_000), SensorAdvice.of(Level.of(2, Unit.G, Detector.ZERO_TO_PEAK), BAND));
    }

    private static MachineDescription description() {
        DriveTrain train = DriveTrain.plain().withShaft("slow", 0.4).withGear(GearStage.of("stage 1", List.of(23, 71))
                        .drivenBy("slow").withInputHertz(10)).withBelt(belt()).withBlades(6).withBladesOn("slow")
                .withCoupling(new CoupledParts("motor", "pump", Coupling.FLEXIBLE)).withGuideVanes(7)
                .withMotor(motor()).withLineHertz(50);
        return MachineDescription.of("pump 2").withMachine(pump()).withTrain(train).withRotor(rotor())
                .withCriterion(CriterionRequest.of("ISO 20816-3")).withPart(part("motor")).withPart(part("pump"))
                .withBearing(bearing()).withPoint(point()).withPoint(MeasuringPoint.of("Q"))
                .withBaseline("P", Map.of("velocity-rms-10-1000Hz", 1.2))
                .withBalancing(Balancing.inPlanes("fan").measuredAt("DE-H").initial(v(5, 60))
                        .trial("fan", mass(10, 0), v(4, 120)))
                .measuredAt(Instant.parse("2026-03-01T06:30:00Z")).inState("full load")
                .withFaulty(MachineDescription.Fact.BASELINE);
    }

    private static Belt belt() {
        return Belt.of("belt", 2.4, 0.2, 0.3).drivenBy("slow");
    }

    private static Motor motor() {
        return Motor.unknown().withPoles(4).withRotorBars(44);
    }

    private static RotorData rotor() {
        return RotorData.unknown().withMassKilograms(60).withGrade(BalanceGrade.of(6.3)).withPlanes(1)
                .withArrangement(Arrangement.OVERHUNG);
    }

    private static MachinePart part(String id) {
        return MachinePart.of(id, Machine.of(MachineKind.PUMP).withRatedPowerKilowatts(37).withSupport(Support.RIGID));
    }

    private static BearingData bearing() {
        return new BearingData("DE", BearingGeometry.of(9, 7.94, 39.04, 0), RotatingRing.INNER);
    }

    private static MeasuringPoint point() {
        return MeasuringPoint.of("P").withDirection(Direction.HORIZONTAL).withPart("pump").withBearing("DE")
                .withTachometer(1).withMounting(Mounting.STUD).withExpandedUncertaintyPercent(5)
                .withPositiveAxis("towards the river");
    }

    private static List<Serializable> machine() {
        MachineLayout layout = MachineLayout.of(Orientation.HORIZONTAL).withPart("motor")
                .withBearing(BearingType.ROLLING).withPart("pump").withThrustBearing(BearingType.ROLLING)
                .withOverhungRotor();
        MeasuringPlan plan = MeasuringPlan.of(layout);
        MachineDescription description = description();
        return List.of(description, description.train(), rotor(), RotorData.unknown(), bearing(), belt(), motor(),
                part("motor").onShaft("slow").withCriterion(CriterionRequest.of("ISO 20816-3")), point(),
                description.train().couplings().get(0), description.train().gears().get(0),
                description.train().ratesAt(25).get(0), layout, plan, plan.points().get(0),
                new Truth("rub", "shaft"), new Site(Site.Kind.SHAFT, "fan shaft", 0.7),
                Answer.seen(List.of("DE-H"), "DE-H: 2\u00d7 is 1.31 of 1\u00d7"));
    }

    /** A pump with an unbalance, a bearing with knocks that are no defect of it, and a level that nothing explains. */
    private static List<Serializable> survey() {
        Synthesis signal = Synthesis.silence(Quantity.ACCELERATION, 12_800, 51_200).noise(0.5, 4)
                .tone(Math.sqrt(2) * 2 * Math.PI * 25 * 5e-3, 25, 0.3)
                .impacts(ImpactTrain.of(37.3, 60, 3000, 0.05).withJitter(0.005), 4);
        MachineSurvey whole = Survey.of(description(), Map.of("P", signal.waveform()));
        PointSurvey point = whole.points().get(0).withoutTraces();
        MachineSurvey survey = Survey.begin(description()).conclude(List.of(point,
                whole.points().get(1).withoutTraces()), List.of(point));
        Waveform little = Waveform.of(Unit.M_PER_S2, 1000, 1, 2, 3);
        NotScored none = new NotScored("fan 3", List.of("P"), "no label");
        Scorecard card = Scorecard.empty()
                .with("pump 2", survey, Map.of("P", Label.of("unbalance"))).without(none);
        return List.of(survey, survey.condition(), survey.criteria().get(0),
                survey.findings().get(0), survey.advice().get(0), survey.balancing().orElseThrow(), point,
                point.recording().orElseThrow(), point.speed(), point.bearings().get(0), point.description(),
                point.description().numbers().get(0), point.lines().get(0), point.dominantLines().get(0),
                point.impulsiveness().orElseThrow(), point.changes().get(0), point.omissions().get(0), point.pattern(),
                point.pattern().phasor(1).orElseThrow(), point.pattern().sidebands().get(0),
                point.pattern().knocks().get(0), point.pattern().noise().get(0), survey.changes().get(0),
                survey.changes().get(0).lines().get(0), survey.changes().get(0).noise().get(0),
                dev.vibra.point.Traces.of(little), Label.healthy(), none, card, card.rows().get(0),
                survey.findings().get(0).decidedBy().get(0), survey.findings().get(0).evidence().get(0),
                new LookAlike("bent-shaft", "bent shaft", 0.2), MachineHistory.of(survey, List.of()),
                new UnexplainedLevel("P", level(3), point.dominantLines()), pattern(), pattern().symptoms().get(0),
                pattern().mimics().get(0));
    }

    private static FaultPattern pattern() {
        return new FaultPattern("bent-shaft", "bent shaft", Site.Kind.SHAFT, List.of(new FaultPattern.CountedSymptom(
                "once-axial", "1\u00d7 along the shaft", 300, 400, 20, 380, 1.2)), List.of(new FaultPattern.Mimic(
                "unbalance/static", "unbalance, static", List.of(new Decider("slow-roll-stays", Effort.STOP,
                "a dial gauge", "if it stays, a bend")))), "a book");
    }

    private static List<Serializable> trend() {
        double[] days = IntStream.range(0, 12).asDoubleStream().toArray();
        double[] values = IntStream.range(0, 12).mapToDouble(i -> 2 + 0.1 * i + 0.01 * (i % 3)).toArray();
        List<Instant> times = IntStream.range(0, 12).mapToObj(i -> Instant.parse("2026-03-01T06:30:00Z")
                .plusSeconds(86_400L * i)).toList();
        Readings readings = Readings.of(times, values, Unit.MM_PER_S);
        HistoryLimits limits = HistoryLimits.alarmAt(4, "a standard").withTrip(7);
        Trend trend = Trend.of(readings);
        Prognosis prognosis = trend.timeTo(3.5);
        return List.of(readings, Readings.ofDays(days, values, Unit.MM_PER_S), trend, prognosis,
                prognosis.instants().orElseThrow(), trend.slopePerDay(), TrendSettings.withDefaults(),
                new ChangePoint(84, 0.001), limits, DescriptorHistory.of("P", "velocity-rms-1x", readings).against(limits),
                Visit.of("a.json", Map.of("P", Map.of("kurtosis", 3.0))).measuredAt(times.get(0)).inState("full load"));
    }

    /** A coast-down through a resonance that two probes see, and one that is too fast for its damping. */
    private static List<Serializable> run() {
        SpeedProfile down = new SpeedProfile(RotationSpeed.ofHertz(30), RotationSpeed.ofHertz(4), 40);
        RunModel model = RunModel.of(down).withMode(10e-6, 15, 0.08, 20).withRunout(new OrderVector(5e-6, 1));
        SpeedSweep sweep = SpeedSweep.read(model.tachometer(1000), 1).sweep().orElseThrow();
        Waveform x = model.recording(Quantity.DISPLACEMENT, 400);
        PointRun run = PointRun.of("X", x, sweep);
        PointRun other = PointRun.of("Y", model.recording(Quantity.VELOCITY, 400), sweep, 1, 1.2);
        ProbePair probes = new ProbePair(45, 135, TurningSense.CLOCKWISE, true);
        ProbePairRun pair = ProbePairRun.of("DE", x, x, run, run, probes);
        SpeedProfile fast = new SpeedProfile(RotationSpeed.ofHertz(30), RotationSpeed.ofHertz(10), 10);
        PointRun rushed = PointRun.of("Z", RunModel.of(fast).withMode(10e-6, 20, 0.02, 0)
                .recording(Quantity.DISPLACEMENT, 400), SpeedSweep.read(fast.tachometer(1000, 1), 1).sweep()
                .orElseThrow());
        return List.of(model, sweep, SpeedSweep.read(model.tachometer(1000), 1),
                SpeedSweep.read(x.part(0, 100), 1), run, other, rushed, run.order(1).orElseThrow(),
                run.resonances().get(0), run.cascade().orElseThrow(), run.withoutCascade(), probes, pair,
                SpeedRun.of("down", sweep).with(run).with(pair).leaving("Q", "it can't be read"),
                SpeedRun.without("up", "no pulses"), new SpeedRun.Left("up", "no pulses"), pair.orbits().get(0),
                pair.centreLine().get(0));
    }
}
