// Alarms: what stands, since when, what it means, what to check, and the answer to it.
import { alarmStates, clock, element, make, sentences, span } from './words.js';
import { post } from './api.js';

let shown = '';

/** Shows the alarms of a status; leaves the page alone while they are the same. */
export function show(status, acted) {
  const alarms = [...status.alarms].sort(byUrgency);
  const now = JSON.stringify(alarms);
  if (now !== shown) {
    shown = now;
    element('alarms').replaceChildren(...alarms.map((alarm) => card(alarm, acted)));
  }
  for (const alarm of alarms) {
    const age = (Date.parse(status.time) - Date.parse(alarm.since)) / 1000;
    const text = `since ${clock(alarm.since)}, for ${span(age)}`;
    const line = document.querySelector(`[data-alarm="${CSS.escape(alarm.id)}"] .since`);
    if (line.textContent !== text) {
      line.textContent = text;
    }
  }
}

export function unanswered(status) {
  return status.alarms.filter((alarm) => alarm.state !== 'acknowledged');
}

function byUrgency(a, b) {
  const order = ['high', 'medium', 'low'];
  const answered = (alarm) => (alarm.state === 'acknowledged' ? 1 : 0);
  return (
    answered(a) - answered(b) || order.indexOf(a.priority) - order.indexOf(b.priority)
  );
}

function card(alarm, acted) {
  const made = make('article', `alarm ${alarm.priority} ${alarm.state}`);
  made.dataset.alarm = alarm.id;
  const state = make('p', 'alarm-state', `⚠ ${alarmStates[alarm.state]}`);
  const since = make('p', 'since');
  since.setAttribute('aria-live', 'off');
  made.append(state, make('h2', '', alarm.title), since);
  if (alarm.state === 'acknowledged') {
    const more = make('details', '');
    more.append(make('summary', '', 'What was seen, what to check'), message(alarm));
    made.append(more);
  } else {
    // before the text, which may be longer than a phone's screen
    made.append(button(alarm, acted), message(alarm));
  }
  return made;
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

function button(alarm, acted) {
  const made = make('button', 'acknowledge', 'Acknowledge');
  made.type = 'button';
  made.setAttribute('aria-label', `Acknowledge: ${alarm.title}`);
  made.addEventListener('click', async () => {
    made.disabled = true;
    try {
      await acted(() => post(`/alarms/${encodeURIComponent(alarm.id)}/acknowledge`), 'Acknowledged.');
    } finally {
      made.disabled = false;
    }
  });
  return made;
}
