// Alarms: what stands, since when, what it means, what to check, and what to do about it.
import { alarmStates, clock, element, make, sentences, span, unanswered } from './words.js';
import { post } from './api.js';
import { answer } from './answer.js';

const STATES = [
  'unacknowledged',
  'returned_unacknowledged',
  'latched',
  'acknowledged',
  'shelved',
];
const PRIORITIES = ['high', 'medium', 'low'];

let cards = new Map(); // by the alarm's id: nothing is drawn anew under a finger

/** Shows the alarms of a status; leaves each card alone while it is the same. */
export function show(status, acted) {
  const before = cards;
  cards = new Map();
  for (const alarm of [...status.alarms].sort(byUrgency(status.alarm_flood))) {
    cards.set(alarm.id, kept(before.get(alarm.id), alarm) ?? drawn(alarm, acted));
  }
  const wanted = [...cards.values()].map((one) => one.made);
  const shown = [...element('alarms').children];
  if (wanted.length !== shown.length || wanted.some((made, i) => made !== shown[i])) {
    element('alarms').replaceChildren(...wanted);
  }
  element('flood').hidden = !status.alarm_flood;
  for (const alarm of status.alarms) {
    times(alarm, (Date.parse(status.time) - Date.parse(alarm.since)) / 1000);
  }
}

function drawn(alarm, acted) {
  return { key: keyOf(alarm), said: alarm.message, made: card(alarm, acted) };
}

/** The card as it was, if only its message has newer numbers: somebody may be writing in it. */
function kept(old, alarm) {
  if (old?.key !== keyOf(alarm)) {
    return null;
  }
  if (old.said !== alarm.message) {
    old.said = alarm.message;
    old.made.querySelector('.alarm-message').replaceWith(message(alarm));
  }
  return old;
}

function keyOf(alarm) {
  return JSON.stringify({ ...alarm, message: '', seen: '' });
}

/** What waits for an answer. */
export function waiting(status) {
  return status.alarms.filter(unanswered).map((alarm) => alarm.id);
}

/** What does not look now: by the settings, or because of the phase. */
export function showUnwatched(status) {
  for (const [id, state, words] of [
    ['switched-off', 'out_of_service', 'Switched off in the settings'],
    ['suppressed', 'suppressed_by_design', 'Silent in this phase by design'],
  ]) {
    const titles = status.unwatched
      .filter((alarm) => alarm.state === state)
      .map((alarm) => (several(status) ? `${alarm.title} (${alarm.probe})` : alarm.title));
    const text = titles.length === 0 ? '' : `${words}: ${titles.join('; ')}.`;
    if (element(id).textContent !== text) {
      element(id).textContent = text;
    }
  }
}

function several(status) {
  return status.probes.length > 1;
}

/** In a flood the one that came first is the place to start, whatever its priority. */
function byUrgency(flood) {
  const rank = (alarm) => [
    STATES.indexOf(alarm.state),
    flood && alarm.first_out ? 0 : 1,
    PRIORITIES.indexOf(alarm.priority),
    alarm.first_out ? 0 : 1,
    Date.parse(alarm.since),
  ];
  return (a, b) => {
    const other = rank(b);
    const at = rank(a).findIndex((value, i) => value !== other[i]);
    return at < 0 ? 0 : rank(a)[at] - other[at];
  };
}

function times(alarm, age) {
  const line = cards.get(alarm.id).made.querySelector('.since');
  const later = Date.parse(alarm.seen) - Date.parse(alarm.since) >= 60_000;
  const seen = later ? `, text of ${clock(alarm.seen)}` : '';
  const over = alarm.state === 'returned_unacknowledged' || alarm.state === 'latched';
  const when = over
    ? `raised ${clock(alarm.since)}, ${span(age)} ago`
    : `since ${clock(alarm.since)}, for ${span(age)}`;
  const text = when + seen;
  if (line.textContent !== text) {
    line.textContent = text;
  }
}

function card(alarm, acted) {
  const made = make('article', `alarm ${alarm.priority} ${alarm.state}`);
  made.dataset.alarm = alarm.id;
  const since = make('p', 'since');
  since.setAttribute('aria-live', 'off');
  made.append(make('p', 'alarm-state', `⚠ ${stateWords(alarm)}`), make('h2', '', alarm.title));
  if (alarm.first_out) {
    made.append(make('p', 'first-out', 'Came first: the others followed on it'));
  }
  made.append(since);
  if (alarm.note !== '') {
    made.append(make('p', 'alarm-note', `Note: ${alarm.note}`));
  }
  const { main, aside } = answer(alarm, (action, body, done) =>
    acted(() => post(`/alarms/${encodeURIComponent(alarm.id)}/${action}`, body), done));
  // before the text, which may be longer than a phone's screen
  made.append(...main);
  if (unanswered(alarm)) {
    made.append(message(alarm));
  } else {
    const more = make('details', '');
    more.append(make('summary', '', 'What was seen, what to check'), message(alarm));
    made.append(more);
  }
  made.append(aside);
  return made;
}

function stateWords(alarm) {
  const by = alarm.who === '' ? '' : ` by ${alarm.who}`;
  if (alarm.state === 'shelved') {
    return `Shelved until ${clock(alarm.shelved_until)}${by}`;
  }
  return alarm.state === 'latched'
    ? `Over, to be reset; acknowledged${by}`
    : alarmStates[alarm.state] + by;
}

/** The message as it is; sentence by sentence, with its checks as a list where it has them. */
function message(alarm) {
  const made = make('div', 'alarm-message');
  for (const sentence of sentences(alarm.message)) {
    const colon = sentence.indexOf(': ');
    const items = colon < 0 ? [] : sentence.slice(colon + 2).split('; ');
    if (items.length < 3) {
      made.append(make('p', '', sentence));
      continue;
    }
    made.append(make('p', '', sentence.slice(0, colon + 1)));
    const list = make('ol', '');
    list.append(...items.map((item) => make('li', '', item.replace(/\.$/, ''))));
    made.append(list);
  }
  return made;
}
