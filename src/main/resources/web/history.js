// What happened in the firing that is shown, the newest first.
import { element, hoursMinutes, make, sentences } from './words.js';
import { get } from './api.js';

const MOST = 200;
const kinds = {
  note: 'Note',
  alarm: 'Alarm',
  phase: 'Phase',
  firing: 'Firing',
  acknowledged: 'Acknowledged',
};
const changes = {
  acknowledged: 'acknowledged',
  normal: 'over',
  returned_unacknowledged: 'over by itself, not acknowledged',
};
let wanted = null;

export async function load(id) {
  wanted = id;
  element('history-panel').hidden = id === null;
  if (id === null) {
    return;
  }
  const { events } = await get(`/firings/${id}/events`);
  if (wanted === id) {
    element('history').replaceChildren(...events.filter(telling).slice(-MOST).reverse().map(line));
  }
}

/** An answer without a name says no more than the alarm's own line beside it. */
function telling(event) {
  return event.kind !== 'acknowledged' || event.text !== '';
}

function line(event) {
  const made = make('li', `${event.kind}-entry`);
  made.append(
    make('span', 'when', event.elapsed_s === null ? '' : hoursMinutes(event.elapsed_s)),
    make('span', 'kind', kinds[event.kind] || event.kind),
    make('span', 'text', event.kind === 'alarm' ? alarmText(event) : event.text),
  );
  return made;
}

/** What was seen when it was raised; later on only how it went. */
function alarmText(event) {
  const change = changes[event.state];
  return `${event.title}: ${change ?? sentences(event.text)[0]}`;
}
