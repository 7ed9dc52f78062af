// A beep while an alarm is unanswered, once the user has allowed it: no browser lets a page make a
// sound before it has been touched.
import { element, say } from './words.js';

const REPEAT_MS = 4000;
const BEEPS = [
  { at: 0, hertz: 880 },
  { at: 0.25, hertz: 880 },
  { at: 0.5, hertz: 1320 },
];

let wanted = localStorage.getItem('sound') === 'on';
let audio = null;
let waiting = [];

/** Rings while there is something to answer, and at once for what is new. */
export function ring(ids) {
  const fresh = ids.some((id) => !waiting.includes(id));
  waiting = ids;
  if (fresh) {
    beep();
  }
}

/** Rings at once for what is said again. */
export function again() {
  if (waiting.length > 0) {
    beep();
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
  setInterval(() => waiting.length > 0 && beep(), REPEAT_MS);
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
    beep();
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
        : 'New alarms are silent here: press the sound button once.',
  );
}

function beep() {
  if (!wanted || !audible()) {
    return;
  }
  for (const { at, hertz } of BEEPS) {
    const tone = audio.createOscillator();
    const level = audio.createGain();
    const start = audio.currentTime + at;
    tone.type = 'square';
    tone.frequency.value = hertz;
    level.gain.setValueAtTime(0, start);
    level.gain.linearRampToValueAtTime(0.4, start + 0.01);
    level.gain.setValueAtTime(0.4, start + 0.16);
    level.gain.linearRampToValueAtTime(0, start + 0.18);
    tone.connect(level).connect(audio.destination);
    tone.start(start);
    tone.stop(start + 0.2);
  }
  navigator.vibrate?.([180, 70, 180, 70, 180]);
}
