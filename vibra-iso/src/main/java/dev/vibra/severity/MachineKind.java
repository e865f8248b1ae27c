package dev.vibra.severity;

import java.util.Arrays;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;

/** What a machine is, as far as the choice of a severity criterion needs it. */
public enum MachineKind {
    /** Pump for liquids with a rotating impeller. */
    PUMP("pump", Family.ROTATING),
    /** Fan. */
    FAN("fan", Family.ROTATING),
    /** Blower. */
    BLOWER("blower", Family.ROTATING),
    /** Turbo compressor: centrifugal, axial. */
    COMPRESSOR("compressor", Family.ROTATING),
    /** Electric motor; classed by its shaft height. */
    ELECTRIC_MOTOR("electric motor", Family.ELECTRICAL),
    /** Electric generator, but not a hydraulic one; classed by its shaft height. */
    GENERATOR("generator", Family.ELECTRICAL),
    /** Gear unit. */
    GEARBOX("gearbox", Family.ROTATING),
    /** Turbine of which it is not said whether steam or gas drives it. */
    TURBINE("turbine", Family.ROTATING),
    /** Steam turbine. */
    STEAM_TURBINE("steam turbine", Family.ROTATING),
    /** Gas turbine. */
    GAS_TURBINE("gas turbine", Family.ROTATING),
    /** Water turbine or pump turbine with what it drives. */
    HYDRAULIC_TURBINE("hydraulic turbine", Family.APART),
    /** Wind turbine. */
    WIND_TURBINE("wind turbine", Family.APART),
    /** Rotary positive displacement compressor or blower: screw, lobe. */
    SCREW_COMPRESSOR("screw compressor", Family.APART),
    /** Compressor with pistons. */
    RECIPROCATING_COMPRESSOR("reciprocating compressor", Family.APART),
    /** Engine with pistons. */
    RECIPROCATING_ENGINE("reciprocating engine", Family.APART),
    /** Generator driven by an engine with pistons. */
    GENERATING_SET("generating set", Family.APART),
    /** Any other machine with rotating parts only. */
    OTHER("other", Family.ROTATING);

    /** Kinds that one rule of the tables usually names together. */
    enum Family {
        ELECTRICAL, ROTATING, APART
    }

    private final String label;
    private final Family family;

    MachineKind(String label, Family family) {
        this.label = label;
        this.family = family;
    }

    /**
     * Finds a kind by its plain name, as in {@code pump} or {@code electric motor}; {@code motor} is taken as electric
     * motor.
     *
     * @param name plain name in lower case
     * @return the kind
     * @throws IllegalArgumentException if no kind has that name; the message lists all names
     */
    public static MachineKind ofName(String name) {
        String wanted = "motor".equals(name) ? ELECTRIC_MOTOR.label : name;
        for (MachineKind kind : values()) {
            if (kind.label.equals(wanted)) {
                return kind;
            }
        }
        throw new IllegalArgumentException("kind must be one of " + names() + ": " + name);
    }

    /**
     * Tells whether the kind is an electrical machine, which the standards class by shaft height.
     *
     * @return true for electric motors and generators
     */
    public boolean isElectrical() {
        return family == Family.ELECTRICAL;
    }

    /** The kinds of the family named; none if no family has that name. */
    static Set<MachineKind> ofFamily(String name) {
        return Arrays.stream(values()).filter(kind -> kind.family != Family.APART
                && kind.family.name().toLowerCase(Locale.ROOT).equals(name)).collect(Collectors.toSet());
    }

    private static String names() {
        return Arrays.stream(values()).map(MachineKind::toString).collect(Collectors.joining(", "));
    }

    /** Returns the plain name, for example {@code electric motor}. */
    @Override
    public String toString() {
        return label;
    }
}
