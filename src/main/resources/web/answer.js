// What the user can do about one alarm: one big button for what it waits for, and beside it, smaller,
// name, note and shelving.
import { make, unanswered } from './words.js';

const KEPT = 'who';
const TIMES = [
  [5, '5 min'],
  [15, '15 min'],
  [30, '30 min'],
  [60, '1 hour'],
  [120, '2 hours'],
  [480, '8 hours'],
];

/**
 * What a card offers: `main` is the big button, if the alarm waits for something.
 * @param act runs an action of the alarm and tells how it went
 */
export function answer(alarm, act) {
  const signature = fields();
  const main = [];
  if (unanswered(alarm)) {
    main.push(
      button('acknowledge', 'Acknowledge', alarm, () =>
        act('acknowledge', signature.read(), 'Acknowledged.'),
      ),
    );
  } else if (alarm.state === 'latched') {
    main.push(
      button('acknowledge reset', 'I have looked: reset', alarm, () =>
        act('reset', signature.read(), 'Reset.'),
      ),
    );
  }
  return { main, aside: aside(alarm, signature, act) };
}

function aside(alarm, signature, act) {
  const made = make('details', 'aside');
  const form = make('div', 'aside-form');
  form.append(...signature.elements, shelving(alarm, signature, act));
  if (alarm.state === 'shelved') {
    form.append(
      button('second', 'Take it off the shelf', alarm, () =>
        act('unshelve', signature.read(), 'It is off the shelf.'),
      ),
    );
  }
  const title = alarm.state === 'shelved' ? 'Shelve longer, or end it' : 'Name, note, shelve';
  made.append(make('summary', '', title), form);
  return made;
}

function shelving(alarm, signature, act) {
  const row = make('div', 'shelving');
  const time = make('select', 'shelve-time');
  time.setAttribute('aria-label', 'Shelve for');
  for (const [minutes, words] of TIMES) {
    const option = make('option', '', words);
    option.value = String(minutes);
    option.selected = minutes === 30;
    time.append(option);
  }
  row.append(
    time,
    button('second shelve', 'Shelve', alarm, () =>
      act(
        'shelve',
        { ...signature.read(), minutes: Number(time.value) },
        'Shelved. It comes back by itself.',
      ),
    ),
  );
  return row;
}

/** Name and note; the name is kept on this device. */
function fields() {
  const who = input('Your name', 100);
  const note = input('Note', 1000);
  who.field.value = localStorage.getItem(KEPT) ?? '';
  who.field.className = 'who';
  note.field.className = 'alarm-note-field';
  return {
    elements: [who.label, note.label],
    read() {
      localStorage.setItem(KEPT, who.field.value.trim());
      return { who: who.field.value, note: note.field.value };
    },
  };
}

function input(title, most) {
  const label = make('label', '', title);
  const field = make('input', '');
  field.maxLength = most;
  field.autocomplete = 'off';
  label.append(field);
  return { label, field };
}

function button(className, text, alarm, run) {
  const made = make('button', className, text);
  made.type = 'button';
  made.setAttribute('aria-label', `${text}: ${alarm.title}`);
  made.addEventListener('click', async () => {
    made.disabled = true;
    try {
      await run();
    } finally {
      made.disabled = false;
    }
  });
  return made;
}
