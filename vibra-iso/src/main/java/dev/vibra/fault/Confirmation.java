package dev.vibra.fault;

import dev.vibra.internal.Require;
import dev.vibra.internal.TableText;
import java.util.Objects;

/**
 * What settles a fault once it leads: a row of the table of faults.
 *
 * @param code code of the fault, without its kind
 * @param effort what it asks of the machine
 * @param measurement what to measure or to look at
 * @param ifSo what it means if it shows the fault
 * @param ifNot what it means if it doesn't
 */
public record Confirmation(String code, Effort effort, String measurement, String ifSo, String ifNot) {
    /**
     * Checks that all is there.
     *
     * @param code see the record
     * @param effort see the record
     * @param measurement see the record
     * @param ifSo see the record
     * @param ifNot see the record
     */
    public Confirmation {
        code = Require.notBlank("code", code);
        Objects.requireNonNull(effort, "effort");
        measurement = Require.notBlank("measurement", measurement);
        ifSo = Require.notBlank("ifSo", ifSo);
        ifNot = Require.notBlank("ifNot", ifNot);
    }

    static Confirmation read(TableText.Row row) {
        return new Confirmation(row.text("code"), row.read("effort", Effort::ofName), row.text("measurement"),
                row.text("if so"), row.text("if not"));
    }

    /** Returns measurement and outcomes. */
    @Override
    public String toString() {
        return measurement + ": " + ifSo + "; " + ifNot;
    }
}
