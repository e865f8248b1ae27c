package dev.vibra.docs.survey.chart;

/** Inks and pens shared by all figures; sizes are for a figure 900 wide that is printed 170 mm wide. */
final class Look {
    static final int WIDTH = 900;
    /** Room left of the plots, the same in all figures, so that they line up under each other. */
    static final int LEFT = 124;
    /** Room right of the plots, which holds half of the number at the last tick. */
    static final int RIGHT = 24;

    static final int PAPER = 0xffffff;
    static final int INK = 0x22262b;
    static final int FAINT = 0xd4d7da;
    static final int PALE = 0x8a9096;
    /**
     * Blue and vermilion of the Okabe-Ito set: apart in hue for every kind of colour vision and in lightness on grey
     * paper.
     */
    static final int TRACE = 0x004f7f;
    static final int MARK = 0xd55e00;
    /** Blue on paper as light as a band of confidence. */
    static final int BAND = 0xdbe6ee;

    static final Pen GRID = Pen.solid(FAINT, 1);
    static final Pen THIN = Pen.solid(INK, 1);
    static final Pen LIMIT = Pen.solid(INK, 1.2).dashed();

    private Look() {}
}
