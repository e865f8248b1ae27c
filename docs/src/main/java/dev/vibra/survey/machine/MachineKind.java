package dev.vibra.survey.machine;

/** Kind of machine, as far as a severity criterion tells kinds apart. */
public enum MachineKind {
    /** Rotodynamic pump. */
    PUMP("pump"),
    /** Electric motor. */
    ELECTRIC_MOTOR("electric motor"),
    /** Electric generator. */
    GENERATOR("generator"),
    /** Fan. */
    FAN("fan"),
    /** Blower. */
    BLOWER("blower"),
    /** Rotary compressor. */
    COMPRESSOR("compressor"),
    /** Steam or gas turbine. */
    TURBINE("turbine"),
    /** Gear unit. */
    GEAR_UNIT("gear unit"),
    /** Any other machine with a rotor. */
    OTHER("other");

    private final String label;

    MachineKind(String label) {
        this.label = label;
    }

    /** Returns the label as it stands in a machine description, for example {@code electric motor}. */
    @Override
    public String toString() {
        return label;
    }
}
