// What happened in the firing that is shown, the newest first.
import { alarmTitle, element, hoursMinutes, make } from './words.js';
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
  acknowledged: 'Acknowledged: ',
  normal: 'Over: ',
  returned_unacknowledged: 'Over by itself: ',
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
    element('history').replaceChildren(...events.slice(-MOST).reverse().map(line));
  }
}

function line(event) {
  const made = make('li', `${event.kind}-entry`);
  const when = event.elapsed_s === null ? '' : hoursMinutes(event.elapsed_s);
  const change = event.kind === 'alarm' && changes[event.state];
  made.append(
    make('span', 'when', when),
    make('span', 'kind', kinds[event.kind] || event.kind),
    make('span', 'text', change ? change + alarmTitle(event.subject) : event.text),
  );
  return made;
}
