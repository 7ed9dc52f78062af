// What the user can do about one alarm: one big button for what it waits for, and beside it, smaller,
// name, note and shelving. All of it stays the same elements while the alarm changes its state.
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
 * What a card offers: `main` are the big buttons, of which one shows if the alarm waits for something;
 * `show(alarm, title)` fits all to its state; `draft()` is a note that was begun and not sent.
 * @param act runs an action of the alarm and tells how it went; true when it was done
 */
export function answer(act) {
  const signature = fields();
  const aside = make('details', 'aside');

  let sending = false;

  /** What was written went with the deed, so it is not to go with the next one. */
  async function sign(action, more, done) {
    const signed = signature.read();
    sending = true;
    if (await act(action, { ...signed, ...more }, done)) {
      signature.sent(signed);
      aside.open = false;
    }
    sending = false;
  }

  const acknowledge = button('acknowledge', 'Acknowledge', () =>
    sign('acknowledge', {}, 'Acknowledged.'),
  );
  const reset = button('acknowledge reset', 'I have looked: reset', () =>
    sign('reset', {}, 'Reset.'),
  );
  const write = button('second write-down', 'Write the note down', () =>
    signature.note() === '' ? signature.ask() : sign('acknowledge', {}, 'Written down.'),
  );
  const time = shelfTimes();
  const shelve = button('second shelve', 'Shelve', () =>
    sign('shelve', { minutes: Number(time.value) }, 'Shelved. It comes back by itself.'),
  );
  const unshelve = button('second', 'Take it off the shelf', () =>
    sign('unshelve', {}, 'It is off the shelf.'),
  );
  const summary = make('summary', '');
  const row = make('div', 'shelving');
  row.append(time, shelve.made);
  const form = make('div', 'aside-form');
  form.append(...signature.elements, write.made, row, unshelve.made);
  aside.append(summary, form);

  function show(alarm, title) {
    const shelved = alarm.state === 'shelved';
    acknowledge.offer(unanswered(alarm));
    reset.offer(alarm.state === 'latched');
    unshelve.offer(shelved);
    write.offer(alarm.state === 'acknowledged'); // others go with a note to their own button
    const offer = shelved ? 'Shelve longer, or end it' : 'Name, note, shelve';
    if (summary.textContent !== offer) {
      summary.textContent = offer;
    }
    signature.recall();
    for (const one of [acknowledge, reset, write, shelve, unshelve]) {
      one.about(title);
    }
  }
  const draft = () => (sending ? '' : signature.note());
  return { main: [acknowledge.made, reset.made], aside, show, draft };
}

function shelfTimes() {
  const made = make('select', 'shelve-time');
  made.setAttribute('aria-label', 'Shelve for');
  for (const [minutes, words] of TIMES) {
    const option = make('option', '', words);
    option.value = String(minutes);
    option.defaultSelected = minutes === 30;
    made.append(option);
  }
  return made;
}

/** Name and note; the name is kept on this device. */
function fields() {
  const who = input('Your name', 100);
  const note = input('Note', 1000);
  let written = false;
  who.field.addEventListener('input', () => {
    written = true;
  });
  who.field.className = 'who';
  note.field.className = 'alarm-note-field';
  return {
    elements: [who.label, note.label],
    /** The name that was given last, on whichever card, unless another one is written here. */
    recall() {
      if (!written) {
        who.field.value = localStorage.getItem(KEPT) ?? '';
      }
    },
    read() {
      localStorage.setItem(KEPT, who.field.value.trim());
      return { who: who.field.value, note: note.field.value };
    },
    note: () => note.field.value.trim(),
    ask: () => note.field.focus(),
    /** Clears the note, unless it has been changed since. */
    sent(signed) {
      if (note.field.value === signed.note) {
        note.field.value = '';
      }
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

/** ms for which a button that has come to stand under a finger takes no press: a double tap is one. */
const TOO_SOON_MS = 1200;

function button(className, text, run) {
  const made = make('button', className, text);
  made.type = 'button';
  let running = false;
  let tooSoon = false;
  let timer = 0;
  const settle = () => {
    made.disabled = running || tooSoon;
  };
  made.addEventListener('click', async () => {
    running = true;
    settle();
    try {
      await run();
    } finally {
      running = false;
      settle();
    }
  });
  return {
    made,
    offer(on) {
      if (on === !made.hidden) {
        return;
      }
      const focused = document.activeElement === made;
      const card = made.closest('article');
      made.hidden = !on;
      // one of a card that has just been drawn is new with all the rest
      tooSoon = on && card !== null;
      clearTimeout(timer);
      timer = setTimeout(() => {
        tooSoon = false;
        settle();
      }, TOO_SOON_MS);
      settle();
      if (!on && focused) {
        card.tabIndex = -1;
        card.focus({ preventScroll: true });
      }
    },
    about(title) {
      made.setAttribute('aria-label', `${text}: ${title}`);
    },
  };
}
