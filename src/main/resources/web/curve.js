// The curve of one firing: whole, growing while it is on, with its gaps and its alarms.
/* global uPlot */
import { element, hoursMinutes, make, say, titledEvent, whole } from './words.js';
import { get } from './api.js';

const POINTS = 1000;
const DASHES = [[], [6, 3], [2, 3], [10, 3, 2, 3]];
const STROKES = ['━━━', '╌╌╌', '┄┄┄', '─·─'];
const HOUR_STEPS = [60, 300, 600, 900, 1800, 3600, 7200, 10800, 14400, 21600, 43200, 86400];

let chart = null;
let firingId = null;
let by = 'recorded'; // which calibration its temperatures are told with
let lines = []; // of each probe, the followed one first: { probe, times, temperatures }
let marks = [];
let targetC = null;
let drawSoon = false;

/** Loads a firing's curve; null shows that there is none. */
export async function load(id) {
  if (id !== firingId) {
    by = 'recorded';
  }
  firingId = id;
  element('panels').classList.toggle('no-curve', id === null);
  element('curve-panel').hidden = id === null;
  if (id === null) {
    lines = [];
    marks = [];
    listMarks();
    listLines();
    return;
  }
  showBy();
  const asked = by;
  const [curve, history] = await Promise.all([
    get(`/firings/${id}/curve?points=${POINTS}&calibration=${asked}`),
    get(`/firings/${id}/events`),
  ]);
  if (firingId !== id || by !== asked) {
    return; // another one was asked for meanwhile
  }
  lines = [curve, ...curve.others].map((one) => ({
    probe: one.probe,
    times: one.elapsed_s,
    temperatures: one.temperature_c,
  }));
  marks = history.events
    .filter((line) => line.kind === 'alarm' && line.state === 'unacknowledged')
    .map((line, index) => ({
      number: index + 1,
      x: line.elapsed_s,
      text: titledEvent(line, lines.length > 1),
    }));
  listMarks();
  listLines();
  draw();
}

/** Adds a reading. Within one pixel's width only the newest is kept, until the next load. */
export function grow(id, probe, elapsedS, temperatureC) {
  const line = lines.length === 1 ? lines[0] : lines.find((one) => one.probe === probe);
  if (by !== 'recorded') {
    return; // the live reading carries the correction that is in force
  }
  if (id === null || id !== firingId || elapsedS === null || !line) {
    return;
  }
  const { times, temperatures } = line;
  const last = times.length - 1;
  const step = last > 1 ? (times[last] - times[0]) / POINTS : 0;
  const sameKind = last > 1 && (temperatures[last] === null) === (temperatureC === null);
  if (last > 1 && elapsedS <= times[last]) {
    return;
  }
  if (sameKind && elapsedS - times[last - 1] < step) {
    times[last] = elapsedS;
    temperatures[last] = temperatureC;
  } else {
    times.push(elapsedS);
    temperatures.push(temperatureC);
  }
  if (!drawSoon) {
    drawSoon = true;
    setTimeout(() => {
      drawSoon = false;
      draw();
    }, 500);
  }
}

/** Lets the potter choose which calibration the temperatures are told with. */
export function wire(reload) {
  element('curve-by').addEventListener('change', (event) => {
    by = event.target.value;
    reload();
  });
}

function showBy() {
  element('curve-by').value = by;
  element('curve-by-hint').hidden = by === 'recorded';
  const which = by === 'recorded' ? '' : `?calibration=${by}`;
  element('curve-csv').href = `/api/v1/firings/${firingId}/export.csv${which}`;
}

export function setTarget(celsius) {
  targetC = celsius;
}

function listMarks() {
  element('curve-marks').replaceChildren(
    ...marks.map((mark) => make('li', '', `${hoursMinutes(mark.x)} ${mark.text}`)),
  );
}

/** Which line is whose, where there are several. */
function listLines() {
  element('curve-lines').hidden = lines.length < 2;
  element('curve-lines').replaceChildren(
    ...lines.map((line, index) => make('li', '', `${STROKES[index % STROKES.length]} ${line.probe}`)),
  );
}

/** All lines over the moments of any of them; undefined where a line has none of its own. */
function joined() {
  return lines.length < 2
    ? [lines[0]?.times ?? [], lines[0]?.temperatures ?? []]
    : uPlot.join(lines.map((line) => [line.times, line.temperatures]));
}

function draw() {
  if (chart && chart.series.length !== lines.length + 1) {
    chart.destroy();
    chart = null;
  }
  const data = joined();
  if (chart) {
    chart.setData(data);
  } else if (data[0].length > 0) {
    chart = new uPlot(options(), data, element('curve'));
  }
}

/** The followed probe's line is thick and whole, the others are thin, each with its own dashes. */
function series(line, index) {
  return {
    stroke: colour(index === 0 ? '--curve' : '--ink'),
    width: index === 0 ? 3 : 1.5,
    dash: DASHES[index % DASHES.length],
    spanGaps: false,
    points: { show: false },
  };
}

function rebuild() {
  if (chart) {
    chart.destroy();
    chart = null;
    draw();
  }
}

function colour(name) {
  return getComputedStyle(document.documentElement).getPropertyValue(name).trim();
}

function size() {
  const width = Math.max(240, element('curve').clientWidth);
  return { width, height: Math.round(Math.min(420, Math.max(240, width * 0.62))) };
}

function options() {
  const axis = {
    stroke: colour('--ink'),
    font: '15px system-ui, sans-serif',
    grid: { stroke: colour('--grid'), width: 1 },
    ticks: { stroke: colour('--grid'), width: 1 },
  };
  return {
    ...size(),
    scales: { x: { time: false, range: xRange }, y: { range: yRange } },
    series: [{}, ...lines.map(series)],
    axes: [
      { ...axis, incrs: HOUR_STEPS, values: (_, splits) => splits.map(hoursMinutes), space: 60 },
      { ...axis, size: 62, values: (_, splits) => splits.map((y) => `${whole(y)}°`) },
    ],
    cursor: { y: false, points: { size: 10 }, drag: { x: false, y: false } },
    legend: { show: false },
    hooks: { draw: [apart(drawTarget), apart(drawMarks)], setCursor: [readOut] },
  };
}

/** A drawing that leaves no trace in the canvas's state, which the chart believes to know. */
function apart(drawing) {
  return (u) => {
    u.ctx.save();
    drawing(u);
    u.ctx.restore();
  };
}

function readOut(u) {
  const at = u.cursor.idx;
  if (at === null || at === undefined) {
    say('curve-readout', 'Touch the curve to read it.');
    return;
  }
  const x = u.data[0][at];
  const read = lines.map((line) => {
    const y = near(line, x);
    const name = lines.length > 1 ? `${line.probe} ` : '';
    return `${name}${y === null ? 'no temperature' : `${whole(y)} °C`}`;
  });
  say('curve-readout', `${hoursMinutes(x)} h: ${read.join(' · ')}`);
}

/** The newest of a line at or before a moment; lines have moments of their own. */
function near(line, x) {
  let low = 0;
  let high = line.times.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (line.times[middle] <= x) {
      low = middle + 1;
    } else {
      high = middle;
    }
  }
  return low === 0 ? null : line.temperatures[low - 1];
}

function xRange(_, min, max) {
  return [min ?? 0, Math.max((min ?? 0) + 600, max ?? 0)];
}

function yRange(_, min, max) {
  const low = Math.min(0, Math.floor((min ?? 0) / 100) * 100);
  const top = Math.max(max ?? 0, targetC ?? 0);
  return [low, Math.max(low + 100, Math.ceil((top + 20) / 100) * 100)];
}

function drawTarget(u) {
  if (targetC === null) {
    return;
  }
  const y = u.valToPos(targetC, 'y', true);
  stroke(u, [8, 8], () => {
    u.ctx.moveTo(u.bbox.left, y);
    u.ctx.lineTo(u.bbox.left + u.bbox.width, y);
  });
  u.ctx.fillStyle = colour('--ink');
  u.ctx.font = `${14 * devicePixelRatio}px system-ui, sans-serif`;
  u.ctx.textAlign = 'left';
  u.ctx.textBaseline = 'bottom';
  u.ctx.fillText(`target ${whole(targetC)} °C`, u.bbox.left + 8 * devicePixelRatio, y - 4);
}

/** A numbered triangle and a line for each alarm; the numbers are in the list below. */
function drawMarks(u) {
  const unit = devicePixelRatio;
  for (const mark of marks) {
    const x = u.valToPos(mark.x, 'x', true);
    const bottom = u.bbox.top + u.bbox.height;
    stroke(u, [3 * unit, 4 * unit], () => {
      u.ctx.moveTo(x, u.bbox.top);
      u.ctx.lineTo(x, bottom);
    }, '--alarm');
    u.ctx.fillStyle = colour('--alarm');
    u.ctx.beginPath();
    u.ctx.moveTo(x, bottom - 26 * unit);
    u.ctx.lineTo(x + 14 * unit, bottom);
    u.ctx.lineTo(x - 14 * unit, bottom);
    u.ctx.fill();
    u.ctx.fillStyle = colour('--on-alarm');
    u.ctx.font = `bold ${13 * unit}px system-ui, sans-serif`;
    u.ctx.textAlign = 'center';
    u.ctx.textBaseline = 'alphabetic';
    u.ctx.fillText(String(mark.number), x, bottom - 4 * unit);
  }
}

function stroke(u, dash, path, name = '--ink') {
  u.ctx.strokeStyle = colour(name);
  u.ctx.lineWidth = 1.5 * devicePixelRatio;
  u.ctx.setLineDash(dash);
  u.ctx.beginPath();
  path();
  u.ctx.stroke();
}

new ResizeObserver(() => chart && chart.setSize(size())).observe(element('curve'));
window.addEventListener('themechange', rebuild);
