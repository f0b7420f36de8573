"use strict";
// Draws every chart of the page from the data block beside it, and sorts tables. No other script than the drawing one is needed, and nothing is fetched.
(() => {
  // A chart in a narrow place, on a phone or in a column, has a variant of its own.
  const isSmall = (place) => place.clientWidth < 600;

  // The title stands in the page's own text, where it wraps.
  const layoutOf = (layout, small) => {
    const { title, ...rest } = layout;
    const top = layout.scene ? 8 : layout.meta?.top ?? 30;
    const margin = { ...layout.margin, t: Math.min(top, layout.margin.t) };
    const shown = { ...rest, margin, height: layout.height - (layout.margin.t - margin.t) };
    if (!small) return shown;
    Object.assign(margin, { l: Math.min(margin.l, 46), r: 8, t: layout.meta?.top ?? 22 });
    Object.assign(shown, { font: { ...layout.font, size: 11 } }, layout.meta?.narrow ?? {});
    return shown;
  };

  const charts = [...document.querySelectorAll("[data-chart]")].map((place) => {
    const { data, layout, config } = JSON.parse(document.getElementById(place.dataset.chart).textContent);
    return { place, data, layout, config };
  });
  const dataOf = (data, small) => data.map((trace) => (small && trace.meta?.narrow ? { ...trace, ...trace.meta.narrow } : trace));
  // A finger has no pointer that hovers: there the buttons over the chart would only hide it.
  const configOf = (config, small) => (small ? { ...config, displayModeBar: false } : config);
  const draw = (chart) => {
    const { place, data, layout, config } = chart;
    const small = (chart.small = isSmall(place));
    chart.drawn = Plotly.newPlot(place, dataOf(data, small), layoutOf(layout, small), configOf(config, small));
  };
  // One at a time, so that the page can be read and scrolled meanwhile.
  const drawAll = async () => {
    for (const chart of charts.filter((c) => !c.drawn)) {
      await new Promise((next) => setTimeout(next));
      if (!chart.drawn) draw(chart);
    }
    await Promise.all(charts.map((c) => c.drawn));
    document.documentElement.dataset.drawn = charts.length;
  };
  drawAll();
  addEventListener("resize", () => charts.filter((c) => c.drawn && c.small !== isSmall(c.place)).forEach(draw));
  // Paper is as wide as it is, whatever the window was.
  const fit = () => charts.forEach((chart) => (chart.drawn ? Plotly.Plots.resize(chart.place) : draw(chart)));
  addEventListener("beforeprint", fit);
  addEventListener("afterprint", fit);

  for (const table of document.querySelectorAll("table.sortable")) {
    const body = table.tBodies[0];
    const heads = [...table.tHead.rows[0].cells];
    heads.forEach((head, column) => {
      head.querySelector("button")?.addEventListener("click", () => {
        const down = head.getAttribute("aria-sort") === "ascending";
        const key = (row) => row.cells[column].dataset.value ?? row.cells[column].textContent;
        const empty = (row) => key(row) === "";
        const compare = (a, b) => {
          // What does not exist stands last, whichever way.
          if (empty(a) || empty(b)) return empty(a) - empty(b);
          const [p, q] = [Number(key(a)), Number(key(b))];
          const order = Number.isNaN(p) || Number.isNaN(q) ? key(a).localeCompare(key(b)) : p - q;
          return down ? -order : order;
        };
        heads.forEach((other) => other.querySelector("button") && other.setAttribute("aria-sort", "none"));
        head.setAttribute("aria-sort", down ? "descending" : "ascending");
        [...body.rows].sort(compare).forEach((row) => body.append(row));
      });
    });
  }
})();
