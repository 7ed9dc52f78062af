// Trying other alarm limits on past firings. Nothing is changed by it: what pleases is to be written
// into the settings file by hand.
import { element, firingName, lit, make, say, span } from './words.js';
import { get } from './api.js';
import { meaning, unit } from './rulewords.js';
import * as run from './trialrun.js';

const ALL = 'all';
const CHOSEN = 'chosen';
const FEW = [1, 5, 10, 20];
const BEGIN_WITH = 'climb_stalled';

let rules = [];
let most = 0;
let over = []; // firings that can be tried on, the newest first

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
  run.wire(title, showBusy);
}

async function open() {
  await run.tellIfRefused(async () => {
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
    if (!run.busy() && !(await run.resume())) {
      await run.followAnother();
    }
  });
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
  const options = FEW.filter((count) => count === 1 || count < over.length).map((count) =>
    option(String(count), count === 1 ? 'the last one' : `the last ${count}`),
  );
  if (over.length > 1 && over.length <= most) {
    options.push(option(ALL, `all ${over.length}`));
  }
  const values = options.map((one) => one.value);
  select.replaceChildren(...options, option(CHOSEN, 'those that I choose'));
  if (before === CHOSEN || values.includes(before)) {
    select.value = before;
  } else {
    select.value = values.includes('5') ? '5' : values[values.length - 1];
  }
  element('trial-none').hidden = over.length > 0;
  showBusy(run.busy());
  const kept = new Set(chosenIds());
  element('trial-choice').replaceChildren(...over.map((firing) => choice(firing, kept)));
  showChoice();
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
  element('trial-choice').hidden = element('trial-firings').value !== CHOSEN;
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
  const which = element('trial-firings').value;
  if (which === CHOSEN) {
    order.firings = chosenIds();
    if (order.firings.length === 0 || order.firings.length > most) {
      say('trial-said', `Choose 1 to ${most} firings.`);
      return;
    }
  } else {
    order.last = which === ALL ? over.length : Number(which);
  }
  await run.tellIfRefused(() => run.begin(order));
}

function showBusy(busy) {
  element('trial-start').disabled = busy || over.length === 0;
}
