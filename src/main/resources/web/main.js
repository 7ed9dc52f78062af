// Puts the panels together: what the daemon says goes to each, what the user does goes back.
import { element, firingName, make, say } from './words.js';
import { Refusal } from './api.js';
import { listen } from './contact.js';
import * as alarms from './alarms.js';
import * as number from './number.js';
import * as forecast from './forecast.js';
import * as curve from './curve.js';
import * as firing from './firing.js';
import * as history from './history.js';
import * as past from './past.js';
import * as probes from './probes.js';
import * as sound from './sound.js';
import * as trial from './trial.js';

const NUMBER_MS = 250;
const RECORD_MS = 60000;

let status = null;
let probe = null;
let probeAt = 0;
let numberSoon = false;
let lookedAt = null; // a past firing, or null for the one that is on
let loadedFor; // what curve and history were loaded for

function showNumber() {
  numberSoon = false;
  if (status) {
    const age = probe.age_s === null ? null : probe.age_s + (Date.now() - probeAt) / 1000;
    number.show(status, probe, age);
  }
}

function onStatus(document) {
  status = document;
  [probe] = status.probes;
  probeAt = Date.now();
  say('kiln', status.kiln);
  say('source', `Readings from: ${status.source}`);
  notices();
  alarms.show(status, acted, firing.takeIn);
  alarms.showUnwatched(status);
  sound.ring(status.alarms);
  firing.show(status);
  forecast.show(status);
  curve.setTarget(status.target_c);
  probes.show(status);
  showNumber();
  const id = shownId();
  if (id !== loadedFor) {
    reload();
  }
}

function onReading(reading) {
  if (!status) {
    return;
  }
  status.phase = reading.phase;
  if (status.firing && reading.firing === status.firing.id) {
    status.firing.elapsed_s = reading.elapsed_s;
  }
  curve.grow(reading.firing, reading.name, reading.elapsed_s, reading.temperature_c);
  if (severalProbes() && reading.name !== status.probes[0].name) {
    probes.grow(reading);
    return;
  }
  probe = { ...reading, age_s: 0 };
  probeAt = Date.now();
  if (!numberSoon) {
    numberSoon = true;
    setTimeout(showNumber, NUMBER_MS);
  }
}

function onEvent(event) {
  if (event.firing === shownId()) {
    quietly(history.load(event.firing, severalProbes()));
  }
  if (event.kind === 'reminder') {
    sound.again();
  }
  if (event.kind === 'alarm') {
    quietly(loadCurve());
  }
  if (event.kind === 'firing' || event.kind === 'alarm') {
    quietly(past.load(look));
    quietly(probes.load());
  }
}

function severalProbes() {
  return status?.probes.length > 1;
}

function shownId() {
  return lookedAt ? lookedAt.id : status?.firing?.id ?? null;
}

function loadCurve() {
  say('curve-title', lookedAt ? `Curve: ${firingName(lookedAt)}` : 'Curve');
  element('curve-back').hidden = lookedAt === null;
  say('curve-back', status?.firing ? 'Back to the firing that is on' : 'Close');
  return curve.load(shownId());
}

function reload() {
  loadedFor = shownId();
  quietly(loadCurve());
  quietly(history.load(loadedFor, severalProbes()));
}

function look(one) {
  lookedAt = one && one.id !== status?.firing?.id ? one : null;
  reload();
  element('curve-panel').scrollIntoView({ block: 'start' });
}

function notices() {
  const list = element('notices');
  list.hidden = status.notices.length === 0;
  if (list.childElementCount !== status.notices.length) {
    list.replaceChildren(...status.notices.map((text) => make('li', '', text)));
  }
}

/** Runs a change, tells how it went, and looks again. True when it was done. */
async function acted(change, done) {
  try {
    await change();
    firing.tell(done);
    return true;
  } catch (problem) {
    firing.tell(
      problem instanceof Refusal
        ? problem.message
        : 'Climbwatch did not answer: nothing was changed. Try again.',
      true,
    );
    return false;
  } finally {
    contact.poll();
  }
}

/** What only grows while a firing is on: its curve, at every point again, and its line in the list. */
function refresh() {
  if (status?.firing) {
    quietly(past.load(look));
    quietly(probes.load());
    if (!lookedAt) {
      quietly(loadCurve());
    }
  }
}

/** A panel that cannot load waits for the next look: the banner says when contact is lost. */
function quietly(loading) {
  loading.catch(() => {
    loadedFor = undefined;
  });
}

function onLost(lost) {
  document.body.classList.toggle('lost', lost);
  if (!lost) {
    onMissed();
  }
}

/** Loads again at the next status what else is only loaded when the daemon tells of something. */
function onMissed() {
  loadedFor = undefined;
  quietly(past.load(look));
  quietly(probes.load());
}

firing.wire(acted);
curve.wire(() => quietly(loadCurve()));
sound.wire();
trial.wire();
element('curve-back').addEventListener('click', () => look(null));
const contact = listen({
  status: onStatus,
  reading: onReading,
  event: onEvent,
  lost: onLost,
  missed: onMissed,
  silent: sound.silence,
});
quietly(past.load(look));
quietly(probes.load());
setInterval(showNumber, 1000);
setInterval(refresh, RECORD_MS);
