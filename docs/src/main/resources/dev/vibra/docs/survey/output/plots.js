/*
 * Figures that can be explored: each figure of class "plot" holds a still picture and the data behind it as JSON. The
 * plot is built when the figure comes near the window, and stands in for the still picture on the screen, not on paper.
 * All words come from the element "words". Nothing here moves by itself.
 */
(function () {
  "use strict";

  const INK = "#22262b";
  const FAINT = "#d4d7da";
  const PALE = "#6b7178";
  const TRACE = "#004f7f";
  const MARK = "#d55e00";
  const FONT = "13px sans-serif";
  const LEAST_HEIGHT = 260;
  const LANE = 22;
  const LANE_WITH_LABEL = 38;
  const MARK_RADIUS = 4.5;
  /** How near, in pixels, the cursor has to come to a line of the analysis. */
  const SNAP = 8;
  /** Fewest values in the narrowest range. */
  const FEWEST = 8;
  const STEP_OF_ZOOM = 1.25;

  const words = JSON.parse(document.getElementById("words").textContent);

  function say(key, ...values) {
    return (words["plot." + key] || key).replace(/\{(\d)\}/g, (all, i) => values[i]);
  }

  function fixed(value, places) {
    const text = value.toFixed(Math.min(Math.max(places, 0), 20));
    return Number(text) === 0 ? text.replace("-", "") : text;
  }

  /** Three significant digits, trailing zeros kept, as in the tables. */
  function forPeople(value) {
    const size = Math.abs(value);
    return fixed(value, size === 0 ? 0 : 2 - Math.floor(Math.log10(1.0005 * size)));
  }

  /** Decimals that a number at multiples of a step needs. */
  function decimals(step) {
    for (let places = 0; places < 15; places++) {
      const scaled = step * 10 ** places;
      if (Math.abs(scaled - Math.round(scaled)) < 1e-6 * scaled) {
        return places;
      }
    }
    return 15;
  }

  /** Decimals by which neighbours at such a distance are told apart. */
  function resolving(distance) {
    return Math.max(0, Math.ceil(-Math.log10(distance)));
  }

  function clamp(value, low, high) {
    return Math.min(Math.max(value, low), high);
  }

  /** The values behind base64: floats, whole numbers, or whole steps of the logarithm above a power of ten. */
  function decoded(data) {
    const text = atob(data.float32 || data.int16 || data.log16);
    const bytes = new Uint8Array(text.length);
    for (let i = 0; i < text.length; i++) {
      bytes[i] = text.charCodeAt(i);
    }
    const view = new DataView(bytes.buffer);
    const read = data.float32 ? i => view.getFloat32(4 * i, true)
      : data.int16 ? i => view.getInt16(2 * i, true)
        : i => view.getUint16(2 * i, true) && 10 ** (12 * ((view.getUint16(2 * i, true) - 1) / 65534 - 1));
    const values = new Float64Array(bytes.length / (data.float32 ? 4 : 2));
    for (let i = 0; i < values.length; i++) {
      values[i] = data.scale * read(i);
    }
    return values;
  }

  function make(tag, className, parent, text) {
    const element = document.createElement(tag);
    element.className = className;
    if (text) {
      element.textContent = text;
    }
    parent.append(element);
    return element;
  }

  /** Whether an axis can bear the values; what nobody has measured stays a still picture. */
  function bearable(data) {
    const largest = data.scale * (data.int16 ? 32767 : 1);
    return (largest === 0 || Math.abs(Math.log10(largest)) < 12) && Math.abs(Math.log10(data.step)) < 12;
  }

  let made = 0;

  class Explorer {
    constructor(figure, data) {
      this.data = data;
      this.spectrum = this.data.kind === "spectrum";
      this.values = decoded(this.data);
      // A spectrum ends at its last line, a recording one sample behind its last; an outline has two values a group.
      const group = this.data.group;
      const beyond = (group > 1 ? 0.5 - 1 / group : 0) + (this.spectrum ? 0 : group > 1 ? 2 / group : 1);
      const last = this.data.first + (this.values.length - 1 + beyond) * this.data.step;
      this.whole = [Math.min(this.data.first, this.data.shown[0]), last];
      this.low = clamp(this.data.shown[0], this.whole[0], last);
      this.high = clamp(this.data.shown[1], this.whole[0], last);
      this.printed = [this.low, this.high];
      this.lines = this.data.lines.slice().sort((a, b) => a.x - b.x);
      this.logarithmic = false;
      this.orders = false;
      this.at = null;
      const still = figure.querySelector("svg.still");
      this.height = Math.max(LEAST_HEIGHT, Math.round(still.getBoundingClientRect().height) - 20);
      this.addControls(figure, still);
      figure.classList.add("explored");
      this.addListeners();
      this.rebuild();
      new ResizeObserver(() => this.resize()).observe(this.area);
    }

    /* ---- what stands around the plot ---- */

    addControls(figure, still) {
      const box = make("div", "plot-box", figure);
      figure.insertBefore(box, still);
      const controls = make("div", "plot-controls", box);
      this.fields = [this.addField(controls, say("from")), this.addField(controls, say("to"))];
      this.unit = make("span", "plot-unit", controls);
      this.addButton(controls, say("whole"), () => this.show(...this.whole));
      if (this.printed[0] > this.whole[0] || this.printed[1] < this.whole[1]) {
        this.addButton(controls, say("printed"), () => this.show(...this.printed));
      }
      if (this.spectrum) {
        this.addSwitch(controls, say("logarithmic"), on => this.logarithmic = on);
      }
      if (this.data.speed) {
        this.addSwitch(controls, say("orders"), on => this.orders = on);
      }
      this.area = make("div", "plot-area", box);
      this.area.tabIndex = 0;
      this.area.setAttribute("role", "application");
      this.area.setAttribute("aria-roledescription", say("role"));
      this.area.setAttribute("aria-label", still.getAttribute("aria-label") || say("role"));
      this.output = make("output", "plot-reading", box, say("hint"));
      this.keys = make("p", "plot-keys", box, say("keys"));
      this.keys.id = "plot-keys-" + made++;
      this.area.setAttribute("aria-describedby", this.keys.id);
    }

    addField(controls, label) {
      const element = make("label", "plot-limit", controls, label + " ");
      const field = make("input", "", element);
      field.type = "number";
      field.step = "any";
      field.addEventListener("change", () => this.showTyped());
      field.addEventListener("keydown", event => {
        if (event.key === "Escape") {
          this.show(...this.whole);
        }
      });
      return field;
    }

    addButton(controls, label, action) {
      const button = make("button", "", controls, label);
      button.type = "button";
      button.addEventListener("click", () => action(button));
      return button;
    }

    addSwitch(controls, label, change) {
      this.addButton(controls, label, button => {
        const on = button.getAttribute("aria-pressed") !== "true";
        button.setAttribute("aria-pressed", on);
        change(on);
        this.rebuild();
      }).setAttribute("aria-pressed", false);
    }

    addListeners() {
      const area = this.area;
      area.addEventListener("mousedown", () => area.focus({ preventScroll: true }));
      area.addEventListener("mousemove", event => this.pointAt(event));
      area.addEventListener("wheel", event => this.wheel(event), { passive: false });
      area.addEventListener("keydown", event => this.key(event));
    }

    /* ---- range ---- */

    /** Shows a range; one that reaches beyond the data is cut, one too narrow is widened. */
    show(low, high) {
      const least = Math.min(FEWEST * this.data.step, this.whole[1] - this.whole[0]);
      const width = clamp(high - low, least, this.whole[1] - this.whole[0]);
      this.low = clamp((low + high - width) / 2, this.whole[0], this.whole[1] - width);
      this.high = this.low + width;
      this.draw();
    }

    zoom(factor, centre) {
      this.show(centre - (centre - this.low) * factor, centre + (this.high - centre) * factor);
    }

    showTyped() {
      const typed = this.fields.map(field => field.valueAsNumber / this.factor());
      const right = typed[0] < typed[1] && typed[1] > this.whole[0] && typed[0] < this.whole[1];
      this.fields.forEach(field => field.setAttribute("aria-invalid", !right));
      if (right) {
        this.show(Math.max(typed[0], this.whole[0]), Math.min(typed[1], this.whole[1]));
      } else {
        this.tell([say("wrong", ...this.whole.map(end => this.limit(end)), this.xUnit())], true);
      }
    }

    wheel(event) {
      if (!this.area.contains(document.activeElement) || event.ctrlKey || event.metaKey || event.deltaY === 0) {
        return; // the page scrolls, or the browser zooms
      }
      event.preventDefault();
      this.zoom(event.deltaY > 0 ? STEP_OF_ZOOM : 1 / STEP_OF_ZOOM, this.xAt(event.clientX));
      this.pointAt(event);
    }

    key(event) {
      if (event.ctrlKey || event.metaKey || event.altKey) {
        return;
      }
      const centre = this.at ? this.at.x : (this.low + this.high) / 2;
      const actions = {
        ArrowLeft: () => this.step(-1, event.shiftKey),
        ArrowRight: () => this.step(1, event.shiftKey),
        "+": () => this.zoom(1 / STEP_OF_ZOOM ** 2, centre),
        "=": () => this.zoom(1 / STEP_OF_ZOOM ** 2, centre),
        "-": () => this.zoom(STEP_OF_ZOOM ** 2, centre),
        Home: () => this.show(...this.whole),
        Escape: () => this.show(...this.whole)
      };
      if (actions[event.key]) {
        event.preventDefault();
        actions[event.key]();
      }
    }

    /* ---- cursor ---- */

    /** Place on the axis, in its own unit, of a point of the window. */
    xAt(clientX) {
      const rect = this.plot.over.getBoundingClientRect();
      return this.low + clamp((clientX - rect.left) / rect.width, 0, 1) * (this.high - this.low);
    }

    perPixel() {
      return (this.high - this.low) / Math.max(1, this.plot.over.clientWidth);
    }

    pointAt(event) {
      const x = this.xAt(event.clientX);
      const near = this.nearest(this.lines, x, SNAP);
      this.place(near ? { x: near.x, y: near.y, line: near } : this.read(x), false);
    }

    nearest(items, x, pixels) {
      let reach = pixels * this.perPixel();
      let best = null;
      items.forEach(item => {
        if (Math.abs(item.x - x) <= reach) {
          reach = Math.abs(item.x - x);
          best = item;
        }
      });
      return best;
    }

    /** The value at a place; where a pixel holds many, the largest of them, so that no peak is missed. */
    read(x) {
      const centre = clamp(Math.round((x - this.data.first) / this.data.step), 0, this.values.length - 1);
      const radius = Math.floor(this.perPixel() / this.data.step / 2);
      let best = centre;
      for (let i = Math.max(0, centre - radius); i <= Math.min(this.values.length - 1, centre + radius); i++) {
        best = Math.abs(this.values[i]) > Math.abs(this.values[best]) ? i : best;
      }
      return this.valueAt(best);
    }

    valueAt(index) {
      return { x: this.data.first + index * this.data.step, y: this.values[index] };
    }

    /** Moves the cursor by a value or a pixel, stopping at each line of the analysis, or to the next of those. */
    step(direction, toLine) {
      const from = this.at ? this.at.x : direction > 0 ? this.low - this.data.step : this.high + this.data.step;
      const stride = Math.max(1, Math.round(this.perPixel() / this.data.step)) * (toLine && !this.lines.length ? 10 : 1);
      const exact = (from - this.data.first) / this.data.step;
      const index = direction > 0 ? Math.floor(exact + 1e-6) + stride : Math.ceil(exact - 1e-6) - stride;
      let to = this.valueAt(clamp(index, 0, this.values.length - 1));
      const ahead = this.lines.filter(line => (line.x - from) * direction > 1e-9 * this.data.step);
      const next = direction > 0 ? ahead[0] : ahead[ahead.length - 1];
      if (next && (toLine || (to.x - next.x) * direction >= 0)) {
        to = { x: next.x, y: next.y, line: next };
      } else if (toLine && this.lines.length) {
        return;
      }
      if (to.x < this.low || to.x > this.high) {
        const half = (this.high - this.low) / 2;
        this.show(to.x - half, to.x + half);
      }
      this.place(to, true);
    }

    place(at, byKey) {
      this.at = at;
      this.moveCursor();
      const x = at.x;
      const data = this.data;
      const places = resolving(data.step) + (at.line ? 1 : 0);
      const parts = [data.x.quantity + " " + fixed(x, places) + " " + data.x.unit];
      if (data.speed) {
        parts.push(say("order", fixed(x / data.speed, Math.max(2, resolving(data.step / data.speed)))));
      }
      parts.push((data.y.quantity + " " + (this.spectrum ? forPeople(at.y) : this.sample(at.y)) + " " + data.y.unit)
        .trim());
      parts.push(at.line ? this.nameOf(at.line) : this.kindOfValue());
      this.tell(at.line ? parts : parts.concat(this.marksAt(x)), byKey);
    }

    /** What the marks say that the cursor passes; a line of the analysis has its name itself. */
    marksAt(x) {
      return this.data.lanes.map(lane => {
        const mark = this.nearest(lane.marks, x, MARK_RADIUS);
        return mark ? say(mark.found ? "found" : "open", lane.label, mark.text) : "";
      });
    }

    /** A sample with the digits that 16 bits of the largest one bear. */
    sample(value) {
      return fixed(value, 3 - Math.floor(Math.log10(32767 * this.data.scale || 1)));
    }

    nameOf(line) {
      return line.name ? say("named", line.name) : say("line");
    }

    kindOfValue() {
      if (this.data.group > 1) {
        return say("grouped", this.data.group);
      }
      return say(this.spectrum ? "bin" : "sample");
    }

    /** Shows a reading; it is spoken only when a key has asked for it. */
    tell(parts, spoken) {
      this.output.setAttribute("aria-live", spoken ? "polite" : "off");
      this.output.replaceChildren(...parts.filter(part => part).map(part => {
        const item = document.createElement("span");
        item.textContent = part;
        return item;
      }));
    }

    moveCursor() {
      if (!this.hair) {
        return;
      }
      const inside = this.at && this.at.x >= this.low && this.at.x <= this.high;
      this.hair.hidden = !inside;
      this.dot.hidden = !inside;
      if (inside) {
        const left = this.plot.valToPos(this.at.x * this.factor(), "x");
        const top = this.plot.valToPos(Math.max(this.at.y, this.levels[0]), "y");
        this.hair.style.transform = "translateX(" + left + "px)";
        this.dot.style.transform = "translate(" + left + "px," + top + "px)";
        this.dot.classList.toggle("on-line", Boolean(this.at.line));
      }
    }

    /* ---- drawing ---- */

    /** Orders are frequencies times this. */
    factor() {
      return this.orders ? 1 / this.data.speed : 1;
    }

    xUnit() {
      return this.orders ? "" : this.data.x.unit;
    }

    limit(value) {
      return fixed(value * this.factor(), resolving((this.high - this.low) * this.factor() / 1000));
    }

    /** The values of the range, or the smallest and largest of groups of them if a pixel has more than a few. */
    cut(columns) {
      const data = this.data;
      const from = clamp(Math.floor((this.low - data.first) / data.step), 0, this.values.length - 2);
      const to = clamp(Math.ceil((this.high - data.first) / data.step) + 1, from + 2, this.values.length);
      const size = Math.max(1, Math.floor((to - from) / (2 * columns)));
      const indices = [];
      for (let begin = from; begin < to; begin += size) {
        let low = begin;
        let high = begin;
        for (let i = begin + 1; i < Math.min(to, begin + size); i++) {
          low = this.values[i] < this.values[low] ? i : low;
          high = this.values[i] > this.values[high] ? i : high;
        }
        indices.push(Math.min(low, high));
        if (low !== high) {
          indices.push(Math.max(low, high));
        }
      }
      return indices;
    }

    /** Range of the levels that leaves no peak of what is seen cut. */
    levelRange(indices) {
      const data = this.data;
      const seen = indices.map(i => this.valueAt(i)).concat(this.lines)
        .filter(point => point.x >= this.low && point.x <= this.high).map(point => point.y);
      const top = seen.reduce((a, b) => Math.max(a, b), -Infinity);
      const bottom = seen.reduce((a, b) => Math.min(a, b), Infinity);
      if (!this.spectrum) {
        const margin = 0.06 * (top - bottom) || Math.abs(top) || 1;
        const reach = 1.08 * Math.max(top, -bottom) || 1;
        return this.isWhole() ? [-reach, reach] : [bottom - margin, top + margin];
      }
      const reference = data.reference && this.isWhole() ? data.reference.level : 0;
      const highest = Math.max(top, reference);
      if (!this.logarithmic) {
        return [0, highest > 0 ? 1.06 * highest : 1];
      }
      const positive = seen.filter(y => y > 0).sort((a, b) => a - b);
      const floor = Math.max(positive[Math.floor(positive.length / 10)] || 0, 1e-6 * highest) || 0.1;
      return [10 ** Math.floor(Math.log10(Math.min(floor, highest / 2 || 1))), highest > 0 ? 1.5 * highest : 1];
    }

    /** The reference belongs to the picture as long as no range was chosen. */
    isWhole() {
      return [this.whole, this.printed].some(range => Math.abs(this.low - range[0]) + Math.abs(this.high - range[1])
        < 1e-9 * (range[1] - range[0]));
    }

    columns() {
      return Math.max(300, this.area.clientWidth) * Math.min(2, window.devicePixelRatio || 1);
    }

    prepared() {
      const indices = this.cut(this.columns());
      this.levels = this.levelRange(indices);
      const least = this.logarithmic ? this.levels[0] : -Infinity;
      return [indices.map(i => (this.data.first + i * this.data.step) * this.factor()),
        indices.map(i => Math.max(this.values[i], least))];
    }

    draw() {
      this.plot.setData(this.prepared());
      this.fields.forEach((field, i) => {
        field.value = this.limit(i === 0 ? this.low : this.high);
        field.removeAttribute("aria-invalid");
      });
      this.unit.textContent = this.xUnit() || say("ordersUnit");
    }

    rebuild() {
      if (this.plot) {
        this.plot.destroy();
      }
      this.width = this.area.clientWidth;
      this.ownLine = this.data.lanes.some(lane => this.measure(lane.label) > this.gutter() - 14);
      const top = this.data.lanes.length * (this.ownLine ? LANE_WITH_LABEL : LANE);
      const height = Math.max(this.height, LEAST_HEIGHT + top);
      this.plot = new uPlot(this.options(height, top + 10), this.prepared(), this.area);
      this.hair = make("div", "plot-hair", this.plot.over);
      this.dot = make("div", "plot-dot", this.plot.over);
      this.draw();
    }

    measure(text) {
      const context = document.createElement("canvas").getContext("2d");
      context.font = FONT;
      return context.measureText(text).width;
    }

    /** Room left of the plot: that of the still picture where there is as much. */
    gutter() {
      return clamp(this.width * 0.138, 70, 124);
    }

    resize() {
      if (this.area.clientWidth > 0 && this.area.clientWidth !== this.width) {
        this.rebuild();
      }
    }

    options(height, top) {
      const whole = (u, splits, i) => splits.map(value => u.axes[i].scale === "x" || !this.logarithmic
        || Math.abs(Math.log10(value) - Math.round(Math.log10(value))) < 1e-9 ? value : null);
      const axis = { stroke: INK, font: FONT, labelFont: "14px sans-serif",
        grid: { stroke: FAINT, width: 1, filter: whole }, ticks: { stroke: INK, width: 1, size: 5 }, values: (u, splits, i, space, step) => splits.map(
          value => value === null ? "" : fixed(value, decimals(u.axes[i].scale === "y" && this.logarithmic
            ? Math.abs(value) : step))) };
      const xTitle = this.orders ? say("orderAxis", forPeople(this.data.speed)) : this.data.x.title;
      return {
        width: this.width, height: height, padding: [top, 22, 0, 0], legend: { show: false },
        cursor: { x: false, y: false, points: { show: false }, drag: { x: true, y: false, setScale: false, dist: 4 },
          bind: { dblclick: () => () => (this.show(...this.whole), null) } },
        scales: {
          x: { time: false, range: () => [this.low * this.factor(), this.high * this.factor()] },
          y: { distr: this.logarithmic ? 3 : 1, range: () => this.levels }
        },
        axes: [Object.assign({}, axis, { label: xTitle, space: 70, size: 34, labelSize: 24 }),
          Object.assign({}, axis, { label: this.data.y.title, size: this.gutter() - 24, labelSize: 24, space: 30 })],
        series: [{}, { stroke: TRACE, width: 1, points: { show: false } }],
        // Scales hold only when the library draws, which it does when everything else is done.
        hooks: { setSelect: [u => this.selected(u)], draw: [u => this.drawMarks(u), () => this.moveCursor()] }
      };
    }

    selected(u) {
      if (u.select.width > 0) {
        const ends = [u.select.left, u.select.left + u.select.width].map(at => u.posToVal(at, "x") / this.factor());
        u.setSelect({ left: 0, top: 0, width: 0, height: 0 }, false);
        this.show(...ends);
      }
    }

    /** Draws what the charting library doesn't know, in pixels of the page from the left upper edge of the plot. */
    drawMarks(u) {
      const ctx = u.ctx;
      const ratio = uPlot.pxRatio;
      const pen = { ctx: ctx, width: u.bbox.width / ratio, height: u.bbox.height / ratio,
        x: x => u.valToPos(x * this.factor(), "x"), y: y => u.valToPos(Math.max(y, this.levels[0]), "y") };
      ctx.save();
      ctx.setTransform(ratio, 0, 0, ratio, u.bbox.left, u.bbox.top);
      ctx.font = FONT;
      ctx.textBaseline = "middle";
      ctx.textAlign = "left";
      this.drawReference(pen);
      this.lines.filter(line => line.x >= this.low && line.x <= this.high).forEach(line => {
        this.stroke(pen, MARK, 1.6, [], pen.x(line.x), pen.height, pen.x(line.x), pen.y(line.y));
        this.disc(pen, pen.x(line.x), pen.y(line.y), 2.5, MARK);
      });
      const lane = this.ownLine ? LANE_WITH_LABEL : LANE;
      this.data.lanes.forEach((row, i) =>
        this.drawLane(pen, row, (i + 1 - this.data.lanes.length) * lane - LANE / 2 - 2));
      ctx.restore();
    }

    drawReference(pen) {
      const reference = this.data.reference;
      if (!reference || reference.level < this.levels[0] || reference.level > this.levels[1]) {
        return;
      }
      const y = pen.y(reference.level);
      this.stroke(pen, INK, 1.2, [7, 4], 0, y, pen.width, y);
      const name = (reference.name + " " + forPeople(reference.level)).trim();
      const width = pen.ctx.measureText(name).width;
      this.text(pen, name, pen.width - width - 3, y > 18 ? y - 9 : y + 10);
    }

    drawLane(pen, lane, y) {
      const width = pen.ctx.measureText(lane.label).width;
      this.stroke(pen, FAINT, 1, [], 0, y, pen.width, y);
      this.text(pen, lane.label, this.ownLine ? 0 : -10 - width, this.ownLine ? y - LANE + 5 : y);
      const marks = lane.marks.filter(mark => mark.x >= this.low && mark.x <= this.high);
      marks.forEach(mark => this.drawMark(pen, mark, y));
      marks.forEach((mark, i) => {
        const begin = pen.x(mark.x) + MARK_RADIUS + 3;
        const end = i + 1 < marks.length ? pen.x(marks[i + 1].x) - MARK_RADIUS - 1 : pen.width + 20;
        const fitting = [mark.text, mark.text.replace("\u00d7", "")].find(
          text => begin + pen.ctx.measureText(text).width <= end);
        if (fitting) {
          this.text(pen, fitting, begin, y);
        }
      });
    }

    /** A filled mark with a dotted line down to its level was found, an open one was not. */
    drawMark(pen, mark, y) {
      const x = pen.x(mark.x);
      if (mark.found) {
        this.stroke(pen, MARK, 1, [2, 3], x, y + MARK_RADIUS, x, pen.y(Math.min(this.levelAt(mark.x), this.levels[1])));
        this.disc(pen, x, y, MARK_RADIUS, MARK);
      } else {
        this.disc(pen, x, y, MARK_RADIUS, "#fff");
        pen.ctx.lineWidth = 1.3;
        pen.ctx.strokeStyle = PALE;
        pen.ctx.stroke();
      }
    }

    /** Level of the line at a frequency: that of the analysis, or the highest of the neighbours of the spectrum. */
    levelAt(x) {
      const line = this.lines.find(one => Math.abs(one.x - x) < this.data.step);
      if (line) {
        return line.y;
      }
      const centre = Math.round((x - this.data.first) / this.data.step);
      return [centre - 1, centre, centre + 1].reduce((level, i) => Math.max(level, this.values[i] || 0), 0);
    }

    stroke(pen, colour, width, dash, x0, y0, x1, y1) {
      const ctx = pen.ctx;
      ctx.strokeStyle = colour;
      ctx.lineWidth = width;
      ctx.setLineDash(dash);
      ctx.beginPath();
      ctx.moveTo(x0, y0);
      ctx.lineTo(x1, y1);
      ctx.stroke();
      ctx.setLineDash([]);
    }

    disc(pen, x, y, radius, colour) {
      pen.ctx.beginPath();
      pen.ctx.arc(x, y, radius, 0, 2 * Math.PI);
      pen.ctx.fillStyle = colour;
      pen.ctx.fill();
    }

    /** Text on a patch of the paper, so that no line strikes it through. */
    text(pen, text, x, y) {
      const ctx = pen.ctx;
      ctx.fillStyle = "#fff";
      ctx.fillRect(x - 1, y - 7, ctx.measureText(text).width + 2, 14);
      ctx.fillStyle = INK;
      ctx.fillText(text, x, y);
    }
  }

  /** Builds a figure; if that fails, its still picture comes back and the others are built all the same. */
  function build(figure) {
    try {
      const data = JSON.parse(figure.querySelector("script").textContent);
      if (bearable(data)) {
        new Explorer(figure, data);
      }
    } catch (error) {
      figure.classList.remove("explored");
      figure.querySelectorAll(".plot-box").forEach(box => box.remove());
      console.error(error);
    }
  }

  const watch = new IntersectionObserver(entries => entries.filter(entry => entry.isIntersecting).forEach(entry => {
    watch.unobserve(entry.target);
    build(entry.target);
  }), { rootMargin: "300px" });
  document.querySelectorAll("figure.plot").forEach(figure => {
    if (figure.querySelector("script[type='application/json']")) {
      watch.observe(figure);
    }
  });
}());
