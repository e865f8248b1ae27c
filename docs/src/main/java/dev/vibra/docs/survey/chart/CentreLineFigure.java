package dev.vibra.docs.survey.chart;

import java.util.Arrays;
import java.util.List;

/** The mean place of a shaft over speed, and beside it a two-sided spectrum. */
public final class CentreLineFigure {
    private static final int HEIGHT = 356;
    private static final double TOP = 16;
    private static final double LEFT = 96;
    private static final double SIDE = HEIGHT - Panel.FOOT - TOP;
    private static final double SPECTRUM = 506;
    private static final double RIGHT = Look.WIDTH - Look.RIGHT;
    private static final Pen TRACE = Pen.solid(Look.TRACE, 1.4);
    private static final Pen LINES = Pen.solid(Look.TRACE, 1);

    private CentreLineFigure() {}

    /**
     * The way of the shaft's centre.
     *
     * @param speeds speeds in r/min
     * @param rights places to the right, as many
     * @param ups places upwards, as many
     * @param marked speeds that are written
     * @param xTitle title of the way to the right
     * @param yTitle title of the way upwards
     */
    public record Way(double[] speeds, double[] rights, double[] ups, List<Double> marked, String xTitle,
            String yTitle) {}

    /**
     * A two-sided spectrum.
     *
     * @param radii radii from the lowest, negative frequency to the highest, an odd number
     * @param spacingHertz distance of the lines in Hz
     * @param endHertz highest frequency that is drawn
     * @param xTitle title of the frequency
     * @param yTitle title of the radius
     */
    public record TwoSided(double[] radii, double spacingHertz, double endHertz, String xTitle, String yTitle) {}

    /**
     * Draws both.
     *
     * @param way the way of the shaft's centre
     * @param spectrum the spectrum
     * @param description what the figure shows
     * @return the figure
     */
    public static Figure of(Way way, TwoSided spectrum, String description) {
        return new Figure(HEIGHT, description, canvas -> {
            drawWay(canvas, way);
            drawSpectrum(canvas, spectrum);
        });
    }

    /** Both ways have one scale. */
    private static void drawWay(Canvas canvas, Way way) {
        double[] x = ends(way.rights());
        double[] y = ends(way.ups());
        double half = 0.58 * Math.max(1e-3, Math.max(x[1] - x[0], y[1] - y[0]));
        double middleX = (x[0] + x[1]) / 2;
        double middleY = (y[0] + y[1]) / 2;
        Panel panel = new Panel(canvas, Axis.linear(middleX - half, middleX + half),
                Axis.linear(middleY - half, middleY + half), LEFT, TOP, LEFT + SIDE, TOP + SIDE)
                .withAxes(way.xTitle(), way.yTitle());
        panel.line(way.rights(), way.ups(), TRACE);
        for (double speed : way.marked()) {
            int nearest = 0;
            for (int i = 1; i < way.speeds().length; i++) {
                nearest = Math.abs(way.speeds()[i] - speed) < Math.abs(way.speeds()[nearest] - speed) ? i : nearest;
            }
            double atX = panel.x(way.rights()[nearest]);
            double atY = panel.y(way.ups()[nearest]);
            canvas.disc(atX, atY, 3, Look.INK);
            String text = Long.toString(Math.round(way.speeds()[nearest]));
            boolean fits = atX + 10 + Lettering.SMALL.width(text) < LEFT + SIDE;
            canvas.label(text, fits ? atX + 8 : atX - 8, atY + Lettering.SMALL.half(), fits ? Lettering.SMALL
                    : Lettering.SMALL.end());
        }
    }

    private static double[] ends(double[] values) {
        return new double[] {Arrays.stream(values).min().orElse(0), Arrays.stream(values).max().orElse(0)};
    }

    private static void drawSpectrum(Canvas canvas, TwoSided spectrum) {
        int middle = spectrum.radii().length / 2;
        double most = Arrays.stream(spectrum.radii()).max().orElse(0);
        Panel panel = new Panel(canvas, Axis.linear(-spectrum.endHertz(), spectrum.endHertz()),
                Axis.linear(0, most > 0 ? 1.08 * most : 1), SPECTRUM, TOP, RIGHT, HEIGHT - Panel.FOOT)
                .withAxes(spectrum.xTitle(), spectrum.yTitle());
        Lines lines = new Lines();
        for (int k = -middle; k <= middle; k++) {
            double hertz = k * spectrum.spacingHertz();
            double radius = spectrum.radii()[k + middle];
            if (Math.abs(hertz) <= spectrum.endHertz() && radius > 0.002 * most) {
                lines.stroke(panel.x(hertz), panel.bottom(), panel.x(hertz), panel.y(radius));
            }
        }
        canvas.stroke(lines, LINES);
        canvas.stroke(new Lines().stroke(panel.x(0), panel.top(), panel.x(0), panel.bottom()), Look.THIN);
    }
}
