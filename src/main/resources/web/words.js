// How numbers, times and words read. Every panel takes them from here.

export const phases = {
  idle: 'No firing',
  drying: 'Drying',
  climbing: 'Climbing',
  holding: 'Holding',
  cooling: 'Cooling',
};

export const alarmStates = {
  unacknowledged: 'Not acknowledged',
  acknowledged: 'Acknowledged',
  returned_unacknowledged: 'Over by itself, not acknowledged',
};

/** What the program says of itself and its machine: true of no one probe. */
const OF_THE_MACHINE = ['readings_late', 'storage_trouble', 'storage_low', 'clock_untrusted'];

/**
 * An alarm's title, with its probe where there are several.
 * @param alarm kind, title and probe
 */
export function titled({ kind, title, probe }, several) {
  return several && probe && !OF_THE_MACHINE.includes(kind) ? `${title} (${probe})` : title;
}

/** The same for an event of the history, where the message names the probe at its head. */
export function titledEvent({ subject, title, text }, several) {
  const probe = /(?:, probe|^Probe) ([^:]+): /.exec(text)?.[1];
  return titled({ kind: subject, title, probe }, several);
}

/** Whether an alarm waits for an answer. */
export function unanswered(alarm) {
  return alarm.state === 'unacknowledged' || alarm.state === 'returned_unacknowledged';
}

/** 3:07, hours and minutes since lighting. */
export function hoursMinutes(seconds) {
  const minutes = Math.floor(Math.max(0, seconds) / 60);
  return `${Math.floor(minutes / 60)}:${String(minutes % 60).padStart(2, '0')}`;
}

/** 40 s, 12 min, 2 h 05 min. */
export function span(seconds) {
  const whole = Math.max(0, Math.round(seconds));
  if (whole < 120) {
    return `${whole} s`;
  }
  const minutes = Math.floor(whole / 60);
  return minutes < 120
    ? `${minutes} min`
    : `${Math.floor(minutes / 60)} h ${String(minutes % 60).padStart(2, '0')} min`;
}

/** Whole degrees; a true minus sign below zero. */
export function whole(number) {
  const rounded = Math.round(number);
  return rounded < 0 ? `−${-rounded}` : String(rounded);
}

/** With its sign, also when positive. */
export function signed(number) {
  return Math.round(number) > 0 ? `+${whole(number)}` : whole(number);
}

export function clock(iso) {
  return new Date(iso).toLocaleTimeString([], { hour: '2-digit', minute: '2-digit' });
}

export function day(iso) {
  return new Date(iso).toLocaleDateString([], { day: 'numeric', month: 'short', year: 'numeric' });
}

/** When a firing was lit: two of one day may have the same name, or none. */
export function lit(iso) {
  return `${day(iso)}, ${clock(iso)}`;
}

/** Rising, falling or level, as far as its uncertainty lets one say. */
export function direction(climb, uncertainty) {
  if (climb > Math.max(1, uncertainty)) {
    return { word: 'rising', arrow: '↗' };
  }
  if (climb < -Math.max(1, uncertainty)) {
    return { word: 'falling', arrow: '↘' };
  }
  return { word: 'level', arrow: '→' };
}

export function firingName(firing) {
  return firing.name || `Firing ${firing.id}`;
}

/** A message's sentences; a full stop inside a number or a shortening does not end one. */
export function sentences(message) {
  const found = [''];
  for (const word of message.split(' ')) {
    const last = found.length - 1;
    if (/[.!?]$/.test(found[last]) && /^[A-Z]/.test(word)) {
      found.push(word);
    } else {
      found[last] += (found[last] === '' ? '' : ' ') + word;
    }
  }
  return found;
}

export function element(id) {
  return document.getElementById(id);
}

/** A new element with a text in it. */
export function make(tag, className, text) {
  const made = document.createElement(tag);
  if (className) {
    made.className = className;
  }
  if (text !== undefined) {
    made.textContent = text;
  }
  return made;
}

/** Sets a text only when it differs, so that nothing is announced or drawn twice. */
export function say(id, text) {
  const target = element(id);
  if (target.textContent !== text) {
    target.textContent = text;
  }
}
