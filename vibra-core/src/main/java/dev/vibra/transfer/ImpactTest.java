package dev.vibra.transfer;

import dev.vibra.internal.Require;
import dev.vibra.signal.Waveform;
import dev.vibra.window.Window;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * An impact (hammer) test: pairs of recordings of force and response, one a hit, each hit at the beginning of its
 * block.
 *
 * <p>Defaults: no windows (rectangular), right when the response has decayed within the block. A
 * {@linkplain Window#force force} and an {@linkplain Window#exponential exponential} window keep noise out; the latter
 * adds damping, see {@link Mode#withoutWindowDamping}.
 *
 * @see "ISO 7626-5:2019, measurements using impact excitation (principle)"
 */
public final class ImpactTest implements Serializable {
    private static final long serialVersionUID = 1;

    private final List<Waveform> forces;
    private final List<Waveform> responses;
    private final Window forceWindow;
    private final Window responseWindow;

    private ImpactTest(List<Waveform> forces, List<Waveform> responses, Window forceWindow, Window responseWindow) {
        this.forces = List.copyOf(forces);
        this.responses = List.copyOf(responses);
        this.forceWindow = Objects.requireNonNull(forceWindow, "force");
        this.responseWindow = Objects.requireNonNull(responseWindow, "response");
        Require.count("number of responses", responses.size(), forces.size(), forces.size());
        for (int i = 0; i < forces.size(); i++) {
            Require.atLeast("number of samples", forces.get(i).length(), 8);
            FrequencyResponse.requireTogether(forces.get(i), responses.get(i));
            FrequencyResponse.requireTogether(forces.get(0), forces.get(i));
        }
    }

    private Object readResolve() {
        return new ImpactTest(forces, responses, forceWindow, responseWindow);
    }

    /**
     * Begins a test without hits.
     *
     * @return a test with the default windows
     */
    public static ImpactTest withDefaults() {
        return new ImpactTest(List.of(), List.of(), Window.rectangular(), Window.rectangular());
    }

    /**
     * Returns this test with windows for both channels.
     *
     * @param force window of the force
     * @param response window of the response
     * @return the new test
     */
    public ImpactTest withWindows(Window force, Window response) {
        return new ImpactTest(forces, responses, force, response);
    }

    /**
     * Returns this test with one more hit.
     *
     * @param force recording of the force, at least 8 samples
     * @param response recording of the response at the same times
     * @return the new test
     * @throws IllegalArgumentException if length or sample rate differ from each other or from the hits before
     */
    public ImpactTest withHit(Waveform force, Waveform response) {
        List<Waveform> moreForces = new ArrayList<>(forces);
        List<Waveform> moreResponses = new ArrayList<>(responses);
        moreForces.add(Objects.requireNonNull(force, "force"));
        moreResponses.add(Objects.requireNonNull(response, "response"));
        return new ImpactTest(moreForces, moreResponses, forceWindow, responseWindow);
    }

    /**
     * Estimates the response from all hits.
     *
     * @return the response
     * @throws IllegalStateException if there is no hit
     */
    public FrequencyResponse response() {
        if (forces.isEmpty()) {
            throw new IllegalStateException("an impact test needs at least one hit");
        }
        return FrequencyResponse.of(this);
    }

    List<Waveform> forces() {
        return forces;
    }

    List<Waveform> responses() {
        return responses;
    }

    Window forceWindow() {
        return forceWindow;
    }

    Window responseWindow() {
        return responseWindow;
    }

    /** Returns the number of hits. */
    @Override
    public String toString() {
        return "impact test of " + forces.size() + " hit(s)";
    }
}
