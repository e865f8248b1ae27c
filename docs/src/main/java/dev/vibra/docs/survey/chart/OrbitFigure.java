package dev.vibra.docs.survey.chart;

import java.util.List;

/** Orbits beside each other on one scale: the path as recorded, and the ellipse once per turn. */
public final class OrbitFigure {
    private static final int HEIGHT = 296;
    private static final double SIDE = 184;
    private static final double LEFT = 96;
    private static final double GAP = 16;
    private static final double TOP = 34;
    private static final int MOST = 4;
    private static final int PARTS = 72;
    private static final Pen PATH = Pen.solid(Look.TRACE, 0.9);
    private static final Pen ELLIPSE = Pen.solid(Look.MARK, 1.6).dashed();

    private OrbitFigure() {}

    /**
     * One orbit.
     *
     * @param title its speed
     * @param note what stands below the title, such as its sense
     * @param rights places to the right along the path
     * @param ups places upwards, as many
     * @param perTurn places per turn, the first of each at the mark
     * @param right amplitude to the right once per turn
     * @param rightLag its lag in degrees
     * @param up amplitude upwards
     * @param upLag its lag in degrees
     */
    public record Path(String title, String note, double[] rights, double[] ups, int perTurn, double right,
            double rightLag, double up, double upLag) {
        double reach() {
            double reach = Math.hypot(right, up);
            for (int i = 0; i < rights.length; i++) {
                reach = Math.max(reach, Math.max(Math.abs(rights[i]), Math.abs(ups[i])));
            }
            return reach;
        }
    }

    /**
     * Draws orbits.
     *
     * @param paths one to four; more are left out
     * @param xTitle title of the way to the right
     * @param yTitle title of the way upwards
     * @param key words for the path, the ellipse and the mark
     * @param description what the figure shows
     * @return the figure
     */
    public static Figure of(List<Path> paths, String xTitle, String yTitle, List<String> key, String description) {
        List<Path> drawn = List.copyOf(paths.subList(0, Math.min(MOST, paths.size())));
        double reach = 1.1 * drawn.stream().mapToDouble(Path::reach).max().orElse(1);
        return new Figure(HEIGHT, description, canvas -> {
            for (int i = 0; i < drawn.size(); i++) {
                draw(canvas, drawn.get(i), reach, LEFT + i * (SIDE + GAP), xTitle, i == 0 ? yTitle : "", i == 0);
            }
            drawKey(canvas, key);
        });
    }

    private static void draw(Canvas canvas, Path path, double reach, double left, String xTitle, String yTitle,
            boolean first) {
        Panel panel = new Panel(canvas, Axis.linear(-reach, reach), Axis.linear(-reach, reach), left, TOP, left + SIDE,
                TOP + SIDE).withYAxis(yTitle, first);
        drawAcross(canvas, panel, Axis.linear(-reach, reach), xTitle);
        canvas.text(path.title(), left + SIDE / 2, 14, Lettering.TEXT.middle());
        canvas.text(Lettering.SMALL.fitting(path.note(), SIDE), left + SIDE / 2, 29, Lettering.SMALL.middle());
        panel.line(path.rights(), path.ups(), PATH);
        double[] x = new double[PARTS + 1];
        double[] y = new double[PARTS + 1];
        for (int i = 0; i <= PARTS; i++) {
            double angle = 2 * Math.PI * i / PARTS;
            x[i] = path.right() * Math.cos(angle - Math.toRadians(path.rightLag()));
            y[i] = path.up() * Math.cos(angle - Math.toRadians(path.upLag()));
        }
        panel.line(x, y, ELLIPSE);
        head(canvas, panel, x, y);
        for (int i = 0; i < path.rights().length; i += path.perTurn()) {
            panel.dots(new double[] {path.rights()[i]}, new double[] {path.ups()[i]}, 3, Look.INK);
        }
    }

    /** As many numbers as upwards: both ways have one scale. */
    private static void drawAcross(Canvas canvas, Panel panel, Axis axis, String title) {
        Lines grid = new Lines();
        Lines marks = new Lines().stroke(panel.left(), panel.bottom(), panel.right(), panel.bottom());
        for (Axis.Tick tick : axis.ticks(5)) {
            double x = Math.floor(panel.x(tick.value())) + 0.5;
            grid.stroke(x, panel.top(), x, panel.bottom());
            marks.stroke(x, panel.bottom(), x, panel.bottom() + 5);
            double half = Lettering.SMALL.width(tick.label()) / 2;
            if (x - half > panel.left() - 4 && x + half < panel.right() + 4) { // the next one stands beside it
                canvas.text(tick.label(), x, panel.bottom() + 18, Lettering.SMALL.middle());
            }
        }
        canvas.stroke(grid, Look.GRID);
        canvas.stroke(marks, Look.THIN);
        canvas.text(title, (panel.left() + panel.right()) / 2, panel.bottom() + 39, Lettering.TEXT.middle());
    }

    /** An arrow head a quarter of a turn on says which way the shaft's centre goes. */
    private static void head(Canvas canvas, Panel panel, double[] x, double[] y) {
        int at = PARTS / 4;
        double tipX = panel.x(x[at]);
        double tipY = panel.y(y[at]);
        double dx = tipX - panel.x(x[at - 2]);
        double dy = tipY - panel.y(y[at - 2]);
        double length = Math.hypot(dx, dy);
        if (length > 0.5) {
            double ux = dx / length;
            double uy = dy / length;
            canvas.fill(new Lines().move(tipX, tipY).line(tipX - 10 * ux + 4 * uy, tipY - 10 * uy - 4 * ux)
                    .line(tipX - 10 * ux - 4 * uy, tipY - 10 * uy + 4 * ux), Look.MARK);
        }
    }

    private static void drawKey(Canvas canvas, List<String> key) {
        double y = HEIGHT - 10;
        double at = LEFT;
        for (int i = 0; i < key.size(); i++) {
            if (i == 2) {
                canvas.disc(at + 13, y - 4, 3, Look.INK);
            } else {
                canvas.stroke(new Lines().stroke(at, y - 4, at + 26, y - 4), i == 0 ? PATH : ELLIPSE);
            }
            canvas.text(key.get(i), at + 32, y, Lettering.SMALL);
            at += 32 + Lettering.SMALL.width(key.get(i)) + 20;
        }
    }
}
