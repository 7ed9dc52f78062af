// Trying other alarm limits on past firings. Nothing is changed by it: what pleases is to be written
// into the settings file by hand.
import { element, firingName, lit, make, say, span } from './words.js';
import { get, post, Refusal } from './api.js';
import { meaning, unit } from './rulewords.js';
import { told } from './trialresult.js';

const LOOK_MS = 400;
const KEPT = 'trial';
const FEW = [1, 5, 10, 20];
const BEGIN_WITH = 'climb_stalled';

let rules = [];
let most = 0;
let over = []; // firings that can be tried on, the newest first
let running = null; // the trial's number

export function wire() {
  element('trial').addEventListener('toggle', () => {
    if (element('trial').open) {
      open();
    }
  });
  element('trial-rule').addEventListener('change', showSettings);
  element('trial-firings').addEventListener('change', showChoice);
  element('trial-form').addEventListener('submit', (event) => {
    event.preventDefault();
    begin();
  });
  element('trial-reset').addEventListener('click', showSettings);
  element('trial-cancel').addEventListener('click', () =>
    tellIfRefused(() => post(`/trials/${running}/cancel`)),
  );
}

async function open() {
  await tellIfRefused(async () => {
    if (rules.length === 0) {
      const settings = await get('/alarm-settings');
      ({ rules } = settings);
      most = settings.most_firings;
      element('trial-rule').replaceChildren(
        ...rules.map((rule) => option(rule.kind, rule.title)),
      );
      element('trial-rule').value = BEGIN_WITH;
      showSettings();
    }
    const { firings } = await get('/firings');
    over = firings.filter((firing) => firing.ended);
    showFirings();
  });
  const kept = sessionStorage.getItem(KEPT);
  if (kept !== null && running === null && rules.length > 0) {
    follow(Number(kept));
  }
}

function showSettings() {
  const rule = chosenRule();
  element('trial-enabled').checked = rule.enabled;
  element('trial-settings').replaceChildren(...rule.settings.map((one) => field(rule, one)));
}

function field(rule, one) {
  const made = make('div', 'trial-field');
  const id = `trial-${one.key}`;
  const label = make('label', '', meaning(rule.kind, one.key));
  label.htmlFor = id;
  const input = make('input', '');
  Object.assign(input, { id, type: 'number', inputMode: 'decimal', required: true, step: 'any' });
  Object.assign(input, { min: one.low, max: one.high, value: one.value });
  input.name = one.key;
  input.setAttribute('aria-describedby', `${id}-hint`);
  const amount = make('span', 'trial-amount');
  amount.append(input, make('span', 'trial-unit', unit(one.key)));
  const hint = make('span', 'hint', hintOf(one));
  hint.id = `${id}-hint`;
  made.append(label, amount, hint);
  return made;
}

function hintOf(one) {
  const long = one.key.endsWith('_s') && one.value >= 120 ? ` (${span(one.value)})` : '';
  return `now ${one.value}${long}, allowed ${one.low} to ${one.high}`;
}

function showFirings() {
  const select = element('trial-firings');
  const before = select.value;
  const few = FEW.filter((count) => count === 1 || count < over.length);
  if (over.length > 1 && over.length <= most) {
    few.push(over.length);
  }
  select.replaceChildren(
    ...few.map((count) => option(String(count), countWords(count))),
    option('chosen', 'those that I choose'),
  );
  select.value = before || String(few.includes(5) ? 5 : few[few.length - 1]);
  element('trial-none').hidden = over.length > 0;
  element('trial-start').disabled = over.length === 0;
  const kept = new Set(chosenIds());
  element('trial-choice').replaceChildren(...over.map((firing) => choice(firing, kept)));
  showChoice();
}

function countWords(count) {
  if (count === 1) {
    return 'the last one';
  }
  return count === over.length ? `all ${count}` : `the last ${count}`;
}

function choice(firing, kept) {
  const made = make('label', 'trial-pick');
  const box = make('input', '');
  box.type = 'checkbox';
  box.value = String(firing.id);
  box.checked = kept.has(firing.id);
  const alarms = firing.alarms === 1 ? '1 alarm' : `${firing.alarms} alarms`;
  const words = make('span', '', firingName(firing));
  words.append(make('span', 'hint', `${lit(firing.began)} · ${alarms}`));
  made.append(box, words);
  return made;
}

function showChoice() {
  element('trial-choice').hidden = element('trial-firings').value !== 'chosen';
}

function option(value, words) {
  const made = make('option', '', words);
  made.value = value;
  return made;
}

function chosenRule() {
  return rules.find((rule) => rule.kind === element('trial-rule').value);
}

function title(kind) {
  return rules.find((rule) => rule.kind === kind).title;
}

function chosenIds() {
  return [...element('trial-choice').querySelectorAll(':checked')].map((box) => Number(box.value));
}

async function begin() {
  const settings = { enabled: element('trial-enabled').checked };
  for (const input of element('trial-settings').querySelectorAll('input')) {
    settings[input.name] = input.valueAsNumber;
  }
  const order = { alarm: { [chosenRule().kind]: settings } };
  if (element('trial-firings').value !== 'chosen') {
    order.last = Number(element('trial-firings').value);
  } else {
    order.firings = chosenIds();
    if (order.firings.length === 0 || order.firings.length > most) {
      say('trial-said', `Choose 1 to ${most} firings.`);
      return;
    }
  }
  await tellIfRefused(async () => {
    follow((await post('/trials', order)).id);
  });
}

/** Runs something and says what came of it; a refusal in its own words. */
async function tellIfRefused(run) {
  say('trial-said', '');
  try {
    await run();
  } catch (problem) {
    say(
      'trial-said',
      problem instanceof Refusal ? problem.message : 'Climbwatch did not answer. Try again.',
    );
  }
}

/** Looks after a trial until it is over. */
async function follow(id) {
  running = id;
  sessionStorage.setItem(KEPT, String(id));
  const trial = await look(id);
  if (trial === undefined) {
    running = null;
    sessionStorage.removeItem(KEPT);
    element('trial-running').hidden = true;
    element('trial-start').disabled = over.length === 0;
    return;
  }
  if (trial) {
    progress(trial);
    if (trial.state !== 'running') {
      running = null;
      result(trial);
      return;
    }
  }
  setTimeout(() => follow(id), LOOK_MS);
}

/** The trial as it stands; null without an answer, which the banner tells; undefined if it is no more. */
async function look(id) {
  try {
    return await get(`/trials/${id}`);
  } catch (problem) {
    return problem instanceof Refusal ? undefined : null;
  }
}

function progress(trial) {
  const on = trial.state === 'running';
  element('trial-running').hidden = !on;
  element('trial-start').disabled = on || over.length === 0;
  if (on) {
    element('trial-result').hidden = true;
    element('trial-bar').max = trial.firings;
    element('trial-bar').value = trial.tried;
    say('trial-so-far', `${trial.tried} of ${trial.firings} done, ${span(trial.took_s)}`);
  }
}

function result(trial) {
  element('trial-told').replaceChildren(...told(trial, title));
  element('trial-csv').href = `/api/v1/trials/${trial.id}/differences.csv`;
  element('trial-csv').hidden = trial.tried === 0;
  say('trial-tables', trial.rules.map((kind) => `[alarm.${kind}]`).join(', '));
  say('trial-toml', trial.toml);
  element('trial-result').hidden = false;
}
