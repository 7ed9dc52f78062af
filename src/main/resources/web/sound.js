// Tones for what waits for an answer and for lost contact, once the user has allowed them: no browser
// lets a page make a sound before it has been touched.
import { element, say, unanswered } from './words.js';

/** How the ear tells them apart, and how soon each is said again; what is low is said once. */
const CALLS = {
  high: { hertz: [880, 880, 1320], everyMs: 4000 },
  medium: { hertz: [660, 660], everyMs: 30000 },
  low: { hertz: [523], everyMs: Infinity },
};
const PRIORITIES = ['high', 'medium', 'low'];
const LOST = [880, 440];
/** A daemon that starts again, or a phone that changes its access point, is back before that. */
const LOST_AFTER_S = 20;
const LOST_EVERY_S = 60;
const TICK_MS = 500;

let wanted = localStorage.getItem('sound') === 'on';
let audio = null;
let waiting = new Map(); // alarms that wait for an answer, by id
let calledAt = -Infinity; // ms of the page's own clock
let lostCalls = 0;

/** Calls at once for what is new or has come back, and goes on for what stands and is not low. */
export function ring(alarms) {
  const before = waiting;
  waiting = new Map(alarms.filter(unanswered).map((alarm) => [alarm.id, alarm]));
  const fresh = [...waiting.values()].filter((alarm) => {
    const known = before.get(alarm.id);
    return !known || (stands(alarm) && !stands(known));
  });
  if (fresh.length > 0) {
    call(loudest([...fresh, ...standing()]));
  }
}

/** Calls at once for what is said again. */
export function again() {
  if (standing().length > 0) {
    call(loudest(standing()));
  }
}

/**
 * Calls when nothing has been heard of the daemon for a while, and then from time to time.
 * @param seconds without contact; 0 while there is contact
 */
export function silence(seconds) {
  const due = seconds < LOST_AFTER_S ? 0 : 1 + Math.floor((seconds - LOST_AFTER_S) / LOST_EVERY_S);
  if (due > lostCalls) {
    play(LOST);
  }
  lostCalls = due;
}

function stands(alarm) {
  return alarm.state === 'unacknowledged';
}

/** What is over by itself waits for an answer, but nobody has to run for it. */
function standing() {
  return [...waiting.values()].filter(stands);
}

function loudest(alarms) {
  return PRIORITIES.find((one) => alarms.some((alarm) => alarm.priority === one));
}

function call(priority) {
  calledAt = performance.now();
  play(CALLS[priority].hertz);
}

function callAgain() {
  const priority = loudest(standing());
  if (priority && performance.now() - calledAt >= CALLS[priority].everyMs) {
    call(priority);
  }
}

export function wire() {
  element('sound').addEventListener('click', () => {
    wanted = !wanted || !audible();
    localStorage.setItem('sound', wanted ? 'on' : 'off');
    if (wanted) {
      wake(true);
    }
    show();
  });
  // a kept wish comes true with the first touch anywhere
  document.addEventListener('pointerdown', () => wanted && !audible() && wake(false));
  setInterval(callAgain, TICK_MS);
  show();
}

function audible() {
  return audio !== null && audio.state === 'running';
}

async function wake(withSample) {
  audio ??= new AudioContext();
  await audio.resume();
  show();
  if (withSample && wanted) {
    play(CALLS.high.hertz);
  }
}

function show() {
  const button = element('sound');
  button.setAttribute('aria-pressed', String(wanted && audible()));
  button.textContent = wanted && audible() ? 'Sound is on' : 'Sound is off';
  say(
    'sound-hint',
    wanted && audible()
      ? ''
      : wanted
        ? 'Sound waits for a first touch of the page: press the sound button once.'
        : 'Alarms and lost contact are silent here: press the sound button once.',
  );
}

function play(hertz) {
  if (!wanted || !audible()) {
    return;
  }
  hertz.forEach((pitch, i) => {
    const tone = audio.createOscillator();
    const level = audio.createGain();
    const start = audio.currentTime + i * 0.25;
    tone.type = 'square';
    tone.frequency.value = pitch;
    level.gain.setValueAtTime(0, start);
    level.gain.linearRampToValueAtTime(0.4, start + 0.01);
    level.gain.setValueAtTime(0.4, start + 0.16);
    level.gain.linearRampToValueAtTime(0, start + 0.18);
    tone.connect(level).connect(audio.destination);
    tone.start(start);
    tone.stop(start + 0.2);
  });
  navigator.vibrate?.(hertz.flatMap(() => [180, 70]));
}
