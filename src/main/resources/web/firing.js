// Starting and ending a firing, saying what the kiln is meant to do, and writing notes.
import { element, firingName, say } from './words.js';
import { post } from './api.js';

let firing = null;
let noteTo = null; // the firing that was on when the note in the making was begun
let saidTimer = 0;

/** Shows the buttons that make sense now. */
export function show(status) {
  firing = status.firing;
  element('start-form').hidden = firing !== null;
  element('running').hidden = firing === null;
  element('csv').hidden = firing === null;
  showNote();
  if (firing === null) {
    return;
  }
  say('running-name', firingName(firing) + (firing.by_itself ? ' (begun by itself)' : ''));
  element('csv').href = `/api/v1/firings/${firing.id}/export.csv`;
  element('declare-holding').hidden = status.phase === 'holding';
  element('declare-climbing').hidden =
    (status.phase === 'climbing' || status.phase === 'drying') && !asksForWord(status);
  element('declare-cooling').hidden = firing.gas_off_said;
}

/** What is being written stays until it is sent, and goes to its own firing, whoever ends that meanwhile. */
function showNote() {
  const begun = element('note').value.trim() !== '';
  if (!begun || noteTo === null || noteTo.id === firing?.id) {
    noteTo = firing;
  }
  element('note-form').hidden = noteTo === null && !begun;
  element('write-note').hidden = noteTo === null;
  say('note-label', noteLabel());
}

function noteLabel() {
  if (noteTo === null) {
    return 'Note, not sent yet: it can be written down once a firing is on';
  }
  return noteTo.id === firing?.id
    ? 'Note'
    : `Note to “${firingName(noteTo)}”, which is over; not sent yet`;
}

/** A signal that has left the kiln is believed again once somebody says what the kiln does. */
function asksForWord(status) {
  return status.alarms.some((alarm) => alarm.kind === 'probe_leapt');
}

/** Says how a change went, for a while. */
export function tell(text, wrong) {
  say('said', text);
  element('said').classList.toggle('wrong', Boolean(wrong));
  clearTimeout(saidTimer);
  saidTimer = setTimeout(() => say('said', ''), wrong ? 20000 : 6000);
}

/** Takes in what was being written to an alarm that is over, as a note that is not sent yet. */
export function takeIn(title, text) {
  const note = element('note');
  note.value += `${note.value === '' ? '' : '\n'}${title}: ${text}`;
  tell(`“${title}” is over. What you had written stands under “Firing”, not sent yet.`, true);
}

/** @param acted runs a change, tells how it went, and looks again */
export function wire(acted) {
  element('start-form').addEventListener('submit', async (event) => {
    event.preventDefault();
    const name = element('firing-name');
    if (await acted(() => post('/firings', { name: name.value }), 'The firing is on.')) {
      name.value = '';
    }
  });
  for (const phase of ['holding', 'climbing', 'cooling']) {
    element(`declare-${phase}`).addEventListener('click', () =>
      acted(() => post(`/firings/${firing.id}/phase`, { phase }), 'Noted.'),
    );
  }
  element('note-form').addEventListener('submit', async (event) => {
    event.preventDefault();
    const note = element('note');
    if (note.value.trim() === '') {
      note.focus();
      return;
    }
    const text = note.value;
    if (await acted(() => post(`/firings/${noteTo.id}/notes`, { text }), 'Written down.')) {
      // what was written on meanwhile is not sent yet
      note.value = note.value.startsWith(text) ? note.value.slice(text.length) : note.value;
      showNote();
    }
  });
  const dialog = element('end-dialog');
  let asked = null; // somebody else may end it and begin another meanwhile
  element('end').addEventListener('click', () => {
    asked = firing.id;
    dialog.showModal();
  });
  element('end-cancel').addEventListener('click', () => dialog.close());
  element('end-confirm').addEventListener('click', () => {
    dialog.close();
    acted(() => post(`/firings/${asked}/end`), 'The firing has ended.');
  });
}
