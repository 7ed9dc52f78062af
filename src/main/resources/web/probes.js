// Each probe: what it reads now, what was found about it, what it has been through.
import { day, element, make, whole } from './words.js';
import { get } from './api.js';

const LIMITS = [800, 1000, 1100, 1200];

let status = null;
let lives = [];

/** Loads what the probes have been through. */
export async function load() {
  ({ probes: lives } = await get('/probes'));
  draw();
}

export function show(document) {
  status = document;
  drawOthers();
  draw();
}

/** A reading of another probe than the followed one. */
export function grow(reading) {
  const place = status ? status.probes.findIndex((one) => one.name === reading.name) : -1;
  if (place > 0) {
    status.probes[place] = { ...status.probes[place], ...reading };
    drawOthers();
  }
}

function drawOthers() {
  const others = status.probes.slice(1);
  element('other-probes').hidden = others.length === 0;
  element('other-probes').replaceChildren(
    ...others.map((probe) => {
      const row = make('li', '');
      row.append(make('span', '', probe.name), make('strong', '', now(probe)));
      return row;
    }),
  );
}

function now(probe) {
  if (probe.temperature_c === null) {
    return `⚠ ${probe.quality === 'good' ? 'no reading yet' : probe.quality_text}`;
  }
  const known = probe.uncertainty_c !== null;
  const more = known ? ` ± ${Math.max(1, Math.round(probe.uncertainty_c))}` : '';
  return `${whole(probe.temperature_c)}${more} °C`;
}

function draw() {
  if (status) {
    element('probes').replaceChildren(...status.probes.map(card));
  }
}

function card(probe) {
  const made = make('li', '');
  const head = make('p', 'probe-head');
  head.append(make('span', '', probe.name), make('span', '', now(probe)));
  made.append(head);
  for (const alarm of status.alarms.filter((one) => one.probe === probe.name && about(one))) {
    made.append(make('p', 'finding', alarm.title));
  }
  made.append(make('p', 'hint', probe.checked ? `Last checked ${day(probe.checked)}` : 'Never checked'));
  const life = lives.find((one) => one.name === probe.name);
  if (life) {
    made.append(make('p', 'hint', firings(life)), hours(life));
    if (life.drift) {
      made.append(make('p', 'finding', life.drift));
    }
    made.append(advice(life));
  }
  return made;
}

/** Alarms of the probe itself, as against those of the firing that it sees. */
function about(alarm) {
  return /^(probe_|probes_|looks_|cold_|readings_)/.test(alarm.kind);
}

function firings(life) {
  const many = life.firings === 1 ? '1 firing' : `${life.firings} firings`;
  const since = life.fitted ? `since ${day(`${life.fitted}T12:00:00`)}` : 'on record';
  return `Type ${life.type} · ${many} ${since}, ${life.high_firings} to 1000 °C and above`;
}

function hours(life) {
  const table = make('table', 'probe-hours');
  const limits = make('tr', '');
  const spent = make('tr', '');
  limits.append(make('th', '', 'above'));
  spent.append(make('td', '', 'hours'));
  for (const limit of LIMITS) {
    limits.append(make('th', '', `${limit} °C`));
    spent.append(make('td', '', life[`hours_over_${limit}_c`].toFixed(1)));
  }
  table.append(limits, spent);
  return table;
}

function advice(life) {
  return make('p', life.replace === 'fine' ? 'hint' : 'finding', life.advice);
}
