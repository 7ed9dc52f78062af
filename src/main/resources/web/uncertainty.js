// The uncertainty of one probe's temperature, itemised in plain words.
import { day, element, make, say } from './words.js';
import { get, Refusal } from './api.js';

const AGAIN_MS = 5000;

/** What a value stands for, by how it is spread. */
const meanings = {
  rectangular: (part) => `at most ${amount(part.value)} ${part.unit} either way`,
  normal_mean: (part) => `scatter of ${amount(part.value)} ${part.unit}`,
  normal_expanded: (part) => `± ${amount(part.value)} ${part.unit} (k = 2)`,
};

function amount(number) {
  return number >= 100 ? number.toFixed(0) : String(Number(number.toPrecision(3)));
}

/** Names the probe of the address, else the one that is followed. */
async function probeName() {
  const asked = new URLSearchParams(window.location.search).get('probe');
  return asked ?? (await get('/status')).probes[0].name;
}

function component(part) {
  const made = make('li', '');
  const head = make('div', 'component-head');
  head.append(make('strong', '', part.name), make('span', '', `u ${part.standard_c.toFixed(2)} °C`));
  made.append(
    head,
    make('p', '', `${meanings[part.distribution](part)}: ${part.from}`),
    make(
      'p',
      'hint',
      `${amount(part.value)} ${part.unit} ÷ ${amount(part.divisor)} × ` +
        `${amount(part.sensitivity)} °C/${part.unit} = ${part.standard_c.toFixed(2)} °C`,
    ),
  );
  return made;
}

function show(answer) {
  const { budget } = answer;
  say('probe', `Probe ${answer.probe}`);
  say('result', budget ? budget.text : 'No temperature at the moment');
  say(
    'checked',
    answer.checked
      ? `Last checked ${day(answer.checked)}, ${answer.checked_how}`
      : 'Never checked against ice, boiling water or another instrument.',
  );
  for (const id of ['meaning', 'parts', 'notes-panel']) {
    element(id).hidden = !budget;
  }
  if (budget) {
    itemise(budget);
  }
}

function itemise(budget) {
  const counted = budget.components.filter((part) => part.standard_c > 0);
  counted.sort((one, other) => other.standard_c - one.standard_c);
  element('components').replaceChildren(...counted.map(component));
  say(
    'sum',
    `Together u = ${budget.combined_c.toFixed(2)} °C, times ${budget.coverage} = ` +
      `${budget.expanded_c.toFixed(2)} °C`,
  );
  const none = budget.components.filter((part) => part.standard_c === 0);
  say('left-out', none.map((part) => `${part.name}: ${part.from}`).join('. '));
  element('notes').replaceChildren(...budget.notes.map((note) => make('li', '', note)));
}

async function look() {
  try {
    show(await get(`/probes/${encodeURIComponent(await probeName())}/uncertainty`));
  } catch (problem) {
    say('result', problem instanceof Refusal ? problem.message : 'No answer from Climbwatch.');
    for (const id of ['meaning', 'parts', 'notes-panel']) {
      element(id).hidden = true;
    }
  }
}

look();
setInterval(look, AGAIN_MS);
