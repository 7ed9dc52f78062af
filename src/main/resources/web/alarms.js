// Alarms: which stand, in what order; each on a card of its own.
import { element, say, titled, unanswered } from './words.js';
import { card } from './card.js';

const STATES = [
  'unacknowledged',
  'returned_unacknowledged',
  'latched',
  'acknowledged',
  'shelved',
];
const PRIORITIES = ['high', 'medium', 'low'];
const GRAVEST = ['falling', 'over_temperature']; // gas that gathers, and a kiln that burns through

let cards = new Map(); // by the alarm's id: nothing is drawn anew under a finger

/**
 * Shows the alarms of a status.
 * @param acted sends a change and tells how it went
 * @param left takes what was being written to an alarm that is over: its title and the text
 */
export function show(status, acted, left) {
  const before = cards;
  const sorted = [...status.alarms].sort(byUrgency);
  cards = new Map(sorted.map(({ id }) => [id, before.get(id) ?? card(id, acted)]));
  for (const [id, gone] of before) {
    if (!cards.has(id) && gone.draft() !== '') {
      left(gone.title(), gone.draft());
    }
  }
  const first = cameFirst(sorted);
  for (const alarm of sorted) {
    cards.get(alarm.id).show(alarm, {
      title: titled(alarm, several(status)),
      now: status.time,
      first: alarm === first,
    });
  }
  place([...cards.values()].map((one) => one.made));
  element('flood').hidden = !status.alarm_flood;
  say('flood', floodWords(first, sorted[0]));
}

/**
 * The one that came before the others of these minutes, if that is so for all that is on the page. Of
 * what caused what it says nothing: a broken probe may be told before the flame that is out.
 */
function cameFirst(all) {
  const since = ({ since: at }) => Date.parse(at);
  return all.find(
    (alarm) =>
      alarm.first_out &&
      all.length > 1 &&
      all.every((other) => other === alarm || since(other) > since(alarm)),
  );
}

/** Where to begin is where the danger is; what came first is told only where it matters. */
function floodWords(first, top) {
  const told = first && first !== top && first.priority !== 'low';
  const marked = told ? ' What came before the others is marked.' : '';
  return `Alarm flood: more than ten in ten minutes. Begin at the top.${marked}`;
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
      .map((alarm) => titled(alarm, several(status)));
    const text = titles.length === 0 ? '' : `${words}: ${titles.join('; ')}.`;
    if (element(id).textContent !== text) {
      element(id).textContent = text;
    }
  }
}

function several(status) {
  return status.probes.length > 1;
}

/**
 * What is to be looked at next stands on top: never low before high, nor what was answered before what
 * was not, and what was shelved last. Flood or not: who came first says little of where the danger is.
 */
function byUrgency(a, b) {
  const other = rank(b);
  const at = rank(a).findIndex((value, i) => value !== other[i]);
  return at < 0 ? 0 : rank(a)[at] - other[at];
}

/** What the potter has to know first, where there is room for one: what is over and was low is not. */
export function foremost(alarms) {
  const sorted = [...alarms].sort(byUrgency);
  return (
    sorted.find((alarm) => alarm.state === 'unacknowledged') ??
    sorted.find((alarm) => unanswered(alarm) && alarm.priority !== 'low')
  );
}

function rank(alarm) {
  const grave = GRAVEST.indexOf(alarm.kind);
  return [
    alarm.state === 'shelved' ? 1 : 0,
    alarm.priority === 'low' ? 1 : 0,
    unanswered(alarm) ? 0 : 1,
    PRIORITIES.indexOf(alarm.priority),
    grave < 0 ? GRAVEST.length : grave,
    STATES.indexOf(alarm.state),
    alarm.first_out ? 0 : 1,
    Date.parse(alarm.since),
  ];
}
