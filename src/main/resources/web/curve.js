// The curve of one firing: whole, growing while it is on, with its gaps and its alarms.
/* global uPlot */
import { element, hoursMinutes, make, say, whole } from './words.js';
import { get } from './api.js';

const POINTS = 1000;
const HOUR_STEPS = [60, 300, 600, 900, 1800, 3600, 7200, 10800, 14400, 21600, 43200, 86400];

let chart = null;
let firingId = null;
let times = [];
let temperatures = [];
let marks = [];
let targetC = null;
let drawSoon = false;

/** Loads a firing's curve; null shows that there is none. */
export async function load(id) {
  firingId = id;
  element('panels').classList.toggle('no-curve', id === null);
  element('curve-panel').hidden = id === null;
  if (id === null) {
    times = [];
    temperatures = [];
    marks = [];
    listMarks();
    return;
  }
  const [curve, history] = await Promise.all([
    get(`/firings/${id}/curve?points=${POINTS}`),
    get(`/firings/${id}/events`),
  ]);
  if (firingId !== id) {
    return; // another one was asked for meanwhile
  }
  times = curve.elapsed_s;
  temperatures = curve.temperature_c;
  marks = history.events
    .filter((line) => line.kind === 'alarm' && line.state === 'unacknowledged')
    .map((line, index) => ({
      number: index + 1,
      x: line.elapsed_s,
      text: line.title,
    }));
  listMarks();
  draw();
}

/** Adds a reading. Within one pixel's width only the newest is kept, until the next load. */
export function grow(id, elapsedS, temperatureC) {
  if (id === null || id !== firingId || elapsedS === null) {
    return;
  }
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

export function setTarget(celsius) {
  targetC = celsius;
}

function listMarks() {
  element('curve-marks').replaceChildren(
    ...marks.map((mark) => make('li', '', `${hoursMinutes(mark.x)} ${mark.text}`)),
  );
}

function draw() {
  const data = [times, temperatures];
  if (chart) {
    chart.setData(data);
  } else if (times.length > 0) {
    chart = new uPlot(options(), data, element('curve'));
  }
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
    series: [
      {},
      {
        stroke: colour('--curve'),
        width: 3,
        spanGaps: false,
        points: { show: false },
      },
    ],
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
  const y = temperatures[at];
  say(
    'curve-readout',
    `${hoursMinutes(times[at])} h: ${y === null ? 'no temperature' : `${whole(y)} °C`}`,
  );
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
