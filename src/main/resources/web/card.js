// One alarm's card. It is made once and then changed in place: while the alarm goes from state to
// state somebody may be writing in it, or have a finger on its button.
import { alarmStates, clock, make, sentences, span, unanswered } from './words.js';
import { post } from './api.js';
import { answer } from './answer.js';

/**
 * The card of one occurrence: its element `made`, and `show(alarm, told)`, where told is its `title`, the
 * time `now` and whether it came `first`; `draft()` is a
 * note that was begun on it.
 * @param acted sends a change and tells how it went; true when it was done
 */
export function card(id, acted) {
  const made = make('article', '');
  made.dataset.alarm = id;
  const state = make('p', 'alarm-state');
  const title = make('h2', '');
  const first = make('p', 'first-out', 'Came before the others of these minutes');
  const since = make('p', 'since');
  since.setAttribute('aria-live', 'off');
  const note = make('p', 'alarm-note');
  const text = folding();
  const deeds = answer((action, body, done) =>
    acted(() => post(`/alarms/${encodeURIComponent(id)}/${action}`, body), done),
  );
  // before the text, which may be longer than a phone's screen
  made.append(state, title, first, since, note, ...deeds.main, text.made, deeds.aside);

  function show(alarm, told) {
    made.className = `alarm ${alarm.priority} ${alarm.state}`;
    write(state, `⚠ ${stateWords(alarm)}`);
    write(title, told.title);
    first.hidden = !told.first;
    write(since, times(alarm, told.now));
    note.hidden = alarm.note === '';
    write(note, `Note: ${alarm.note}`);
    deeds.show(alarm, told.title);
    text.show(alarm);
  }
  return { made, show, draft: deeds.draft, title: () => title.textContent };
}

/** Only when it differs, so that nothing is announced or drawn twice. */
function write(target, text) {
  if (target.textContent !== text) {
    target.textContent = text;
  }
}

const JUST_NOW_MS = 60_000;

function times(alarm, now) {
  const since = Date.parse(alarm.since);
  const seen = Date.parse(alarm.seen);
  const age = span((Date.parse(now) - since) / 1000);
  const later = seen - since >= JUST_NOW_MS;
  const text = later ? `, text of ${clock(alarm.seen)}` : '';
  if (alarm.state === 'returned_unacknowledged' || alarm.state === 'latched') {
    return `raised ${clock(alarm.since)}, ${age} ago${text}`;
  }
  // what is shelved may be over without a word, or not have come yet
  if (alarm.state === 'shelved' && Date.parse(now) - seen >= JUST_NOW_MS) {
    return `from ${clock(alarm.since)}, ${age} ago${later ? `, last seen ${clock(alarm.seen)}` : ''}`;
  }
  return `since ${clock(alarm.since)}, for ${age}${text}`;
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

/** What was seen and what to check: open to read until it is answered, then folded away. */
function folding() {
  const made = make('div', '');
  const folded = make('details', '');
  const place = make('div', '');
  folded.append(make('summary', '', 'What was seen, what to check'), place);
  let said = null;
  let shown = null;

  function show(alarm) {
    const open = unanswered(alarm);
    if (said === alarm.message && shown === open) {
      return;
    }
    said = alarm.message;
    shown = open;
    if (open) {
      made.replaceChildren(message(said));
      return;
    }
    place.replaceChildren(message(said));
    if (folded.parentElement !== made) {
      made.replaceChildren(folded);
    }
  }
  return { made, show };
}

/** The message as it is; sentence by sentence, with its checks as a list where it has them. */
function message(said) {
  const made = make('div', 'alarm-message');
  for (const sentence of sentences(said)) {
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
