// What happened in the firing that is shown, the newest first.
import { element, hoursMinutes, make, sentences, titledEvent } from './words.js';
import { get } from './api.js';

const MOST = 200;
const kinds = {
  note: 'Note',
  alarm: 'Alarm',
  phase: 'Phase',
  firing: 'Firing',
  acknowledged: 'Acknowledged',
  reminder: 'Reminder',
  shelved: 'Shelved',
  unshelved: 'Off the shelf',
  reset: 'Reset',
};
const changes = {
  acknowledged: 'acknowledged',
  returned_unacknowledged: 'over by itself, not acknowledged',
  latched: 'over, to be reset',
  shelved: 'shelved',
};
let wanted = null;

/**
 * @param several whether there is more than one probe, so that alarms have to say whose they are
 */
export async function load(id, several) {
  wanted = id;
  element('history-panel').hidden = id === null;
  if (id === null) {
    return;
  }
  const { events } = await get(`/firings/${id}/events`);
  if (wanted === id) {
    element('history').replaceChildren(
      ...events
        .filter(telling)
        .slice(-MOST)
        .reverse()
        .map((event) => line(event, several)),
    );
  }
}

/** An answer without a name says no more than the alarm's own line beside it. */
function telling(event) {
  return event.kind !== 'acknowledged' || event.text !== '';
}

function line(event, several) {
  const made = make('li', `${event.kind}-entry`);
  made.append(
    make('span', 'when', event.elapsed_s === null ? '' : hoursMinutes(event.elapsed_s)),
    make('span', 'kind', kinds[event.kind] || event.kind),
    make('span', 'text', spoken(event, several)),
  );
  return made;
}

function spoken(event, several) {
  return event.kind === 'alarm' || event.kind === 'reminder'
    ? alarmText(event, several)
    : event.text;
}

/** What was seen when it was raised; later on only how it went: the first words of what is over say it. */
function alarmText(event, several) {
  const change = event.kind === 'alarm' ? changes[event.state] : undefined;
  return `${titledEvent(event, several)}: ${change ?? sentences(event.text)[0]}`;
}
