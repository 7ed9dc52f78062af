// Alarms: which stand, in what order; each on a card of its own.
import { element } from './words.js';
import { card } from './card.js';

const STATES = [
  'unacknowledged',
  'returned_unacknowledged',
  'latched',
  'acknowledged',
  'shelved',
];
const PRIORITIES = ['high', 'medium', 'low'];

let cards = new Map(); // by the alarm's id: nothing is drawn anew under a finger

/** Shows the alarms of a status. */
export function show(status, acted) {
  const before = cards;
  const sorted = [...status.alarms].sort(byUrgency(status.alarm_flood));
  cards = new Map(sorted.map(({ id }) => [id, before.get(id) ?? card(id, acted)]));
  for (const alarm of sorted) {
    cards.get(alarm.id).show(alarm, status.time);
  }
  place([...cards.values()].map((one) => one.made));
  element('flood').hidden = !status.alarm_flood;
}

/** Brings the cards into their order; one that is being written in stays put, the others go round it. */
function place(wanted) {
  const list = element('alarms');
  for (const shown of [...list.children]) {
    if (!wanted.includes(shown)) {
      shown.remove();
    }
  }
  wanted.forEach((made, i) => {
    // to be moved would take the focus from it
    while (made.contains(document.activeElement) && list.children[i] !== made) {
      list.append(list.children[i]);
    }
    if (list.children[i] !== made) {
      list.insertBefore(made, list.children[i] ?? null);
    }
  });
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
