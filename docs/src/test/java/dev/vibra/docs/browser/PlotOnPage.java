package dev.vibra.docs.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/** One figure of the page that can be explored, and what a reader does with it. */
final class PlotOnPage {
    /** The ink of curves, #004f7f, more or less. */
    private static final String IS_INK = "(d[i] < 100 && d[i + 1] < 140 && d[i + 2] > 100 && d[i + 2] - d[i] > 60)";

    private final BrowserPage page;
    private final int index;

    PlotOnPage(BrowserPage page, int index) {
        this.page = page;
        this.index = index;
    }

    /** An expression on the element of the figure. */
    String script(String rest) {
        return "document.querySelectorAll('figure.plot')[" + index + "]" + rest;
    }

    /** An expression on the data of the figure. */
    String data(String rest) {
        return "JSON.parse(" + script(".querySelector('script').textContent)") + rest;
    }

    double number(String field) throws IOException {
        return page.number(data(field));
    }

    String text(String field) throws IOException {
        return page.text(data(field));
    }

    boolean has(String field) throws IOException {
        return (Boolean) page.run("'" + field + "' in " + data(""));
    }

    PlotOnPage built() throws IOException {
        scroll();
        page.awaitTrue(script(".classList.contains('explored')"));
        return this;
    }

    /** Brings the plot to the middle of the window and waits until the page has come to rest. */
    void scroll() throws IOException {
        page.run("(" + script(".querySelector('.plot-area') || ") + script(")")
                + ".scrollIntoView({block: 'center', behavior: 'instant'})");
        page.run("new Promise(done => requestAnimationFrame(() => requestAnimationFrame(done)))");
    }

    void focus() throws IOException {
        page.run(script(".querySelector('.plot-area').focus({preventScroll: true})"));
    }

    private double edge(String side) throws IOException {
        return page.number(script(".querySelector('.u-over').getBoundingClientRect()." + side));
    }

    private double x(double share) throws IOException {
        return edge("left") + share * edge("width");
    }

    private double y() throws IOException {
        return edge("top") + 0.5 * edge("height");
    }

    void drag(double from, double to) throws IOException {
        page.drag(x(from), x(to), y());
    }

    void doubleClick() throws IOException {
        page.click(x(0.5), y(), 2);
    }

    void wheel(double down) throws IOException {
        page.wheel(x(0.5), y(), down);
        page.run("new Promise(done => setTimeout(done, 100))");
    }

    void tap() throws IOException {
        page.touch(x(0.4), y(), 0);
    }

    void swipeUp() throws IOException {
        page.touch(x(0.5), y(), -150);
    }

    /** Points the mouse at a place of the axis. */
    void point(double value) throws IOException {
        double[] range = range();
        page.move(x((value - range[0]) / (range[1] - range[0])), y());
    }

    /** The limits as they stand in the fields. */
    double[] range() throws IOException {
        return new double[] {page.number(script(".querySelectorAll('input')[0].valueAsNumber")),
            page.number(script(".querySelectorAll('input')[1].valueAsNumber"))};
    }

    /** Fields are rounded to a thousandth of the range, places to a pixel. */
    void assertRange(double low, double high) throws IOException {
        double[] range = range();
        assertEquals(low, range[0], 0.005 * (high - low), this + " begins");
        assertEquals(high, range[1], 0.005 * (high - low), this + " ends");
    }

    void type(double low, double high) throws IOException {
        double[] both = {low, high};
        for (int i = 0; i < 2; i++) {
            page.run("(field => { field.focus(); field.select(); })(" + script(".querySelectorAll('input')[" + i + "])"));
            page.type(String.valueOf(both[i]));
        }
        page.key("Enter", false);
    }

    void press(String label) throws IOException {
        page.run("Array.from(" + script(".querySelectorAll('button')).find(one => one.textContent === '" + label
                + "').click()"));
    }

    String reading() throws IOException {
        return page.text("Array.from(" + script(".querySelector('output').children, part => part.textContent)")
                + ".join(' | ')");
    }

    /** The order of the reading. */
    double orderRead() throws IOException {
        return Double.parseDouble(reading().replaceAll(".*Order ([0-9.]+).*", "$1"));
    }

    String outputLive() throws IOException {
        return page.text(script(".querySelector('output').getAttribute('aria-live')"));
    }

    /** Lines of the analysis within the range that is seen. */
    List<Integer> linesInView() throws IOException {
        double[] range = range();
        List<Integer> lines = new ArrayList<>();
        int count = (int) number(".lines.length");
        for (int i = 0; i < count; i++) {
            double x = number(".lines[" + i + "].x");
            if (x > range[0] && x < range[1]) {
                lines.add(i);
            }
        }
        return lines;
    }

    /** Place of the line of the analysis that is nearest to a frequency. */
    double nearestLine(double hertz) throws IOException {
        return page.number(data(".lines.map(line => line.x).sort((a, b) => Math.abs(a - " + hertz + ") - Math.abs(b - "
                + hertz + "))[0]"));
    }

    /**
     * The table of lines that belongs to a velocity spectrum: the first behind it, before the next such spectrum. A row
     * is frequency, order, level, name.
     */
    List<String[]> rowsOfItsTable() throws IOException {
        List<String[]> rows = new ArrayList<>();
        String found = page.text("((figure, all) => { const behind = one => figure.compareDocumentPosition(one) & 4;"
                + " if (" + data(".y.unit") + " !== 'mm/s rms') { return ''; }"
                + " const table = Array.from(document.querySelectorAll('table')).find(one => behind(one) &&"
                + " one.rows[0].cells.length === 4 && one.rows[0].cells[0].textContent.startsWith('Frequency'));"
                + " const other = all.find(one => behind(one) && JSON.parse(one.querySelector('script').textContent).y.unit"
                + " === 'mm/s rms'); if (!table || other && other.compareDocumentPosition(table) & 4) { return ''; }"
                + " return Array.from(table.rows).slice(1).map(row => Array.from(row.cells, cell => cell.textContent)"
                + ".join('|')).join('\\n'); })(" + script("") + ", Array.from(document.querySelectorAll('figure.plot')))");
        for (String row : found.split("\n")) {
            if (!row.isEmpty()) {
                rows.add(row.split("\\|", -1));
            }
        }
        return rows;
    }

    /** How many points of the canvas have the ink of curves. */
    double ink() throws IOException {
        return page.number("(c => { const d = c.getContext('2d').getImageData(0, 0, c.width, c.height).data; let n = 0;"
                + " for (let i = 0; i < d.length; i += 4) { if " + IS_INK + " { n++; } } return n; })("
                + script(".querySelector('canvas'))"));
    }

    /** Whether the uppermost row of the plot is free of the curve. */
    boolean peakInside() throws IOException {
        return page.number("((c, o, a) => { const r = c.width / c.clientWidth, b = o.getBoundingClientRect(),"
                + " k = c.getBoundingClientRect(); const d = c.getContext('2d').getImageData((b.left - k.left) * r,"
                + " (b.top - k.top) * r, b.width * r, 2 * r).data; let n = 0; for (let i = 0; i < d.length; i += 4) { if "
                + IS_INK + " { n++; } } return n; })(" + script(".querySelector('canvas'), ")
                + script(".querySelector('.u-over'))")) == 0;
    }

    @Override
    public String toString() {
        return "figure-" + (index + 1);
    }
}
