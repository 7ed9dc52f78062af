// The firings so far: a look at each curve, and its record to keep.
import { day, element, firingName, make, span, whole } from './words.js';
import { get } from './api.js';

/** @param look shows the curve of a firing */
export async function load(look) {
  const { firings } = await get('/firings');
  element('past-none').hidden = firings.length > 0;
  element('past').replaceChildren(...firings.map((firing) => row(firing, look)));
}

function row(firing, look) {
  const made = make('li', '');
  const words = make('div', 'past-words');
  words.append(make('strong', '', firingName(firing)), make('span', '', facts(firing)));
  const show = make('button', '', 'Show');
  show.type = 'button';
  show.setAttribute('aria-label', `Show the curve of ${firingName(firing)}`);
  show.addEventListener('click', () => look(firing));
  const csv = make('a', 'download', 'CSV');
  csv.href = `/api/v1/firings/${firing.id}/export.csv`;
  csv.download = '';
  csv.setAttribute('aria-label', `Download ${firingName(firing)} as CSV`);
  const actions = make('div', 'past-actions');
  actions.append(show, csv);
  made.append(words, actions);
  return made;
}

function facts(firing) {
  const parts = [day(firing.began)];
  if (firing.ended) {
    parts.push(span((Date.parse(firing.ended) - Date.parse(firing.began)) / 1000));
  } else {
    parts.push('on now');
  }
  if (firing.peak_c !== null) {
    parts.push(`peak ${whole(firing.peak_c)} °C`);
  }
  parts.push(firing.alarms === 1 ? '1 alarm' : `${firing.alarms} alarms`);
  return parts.join(' · ');
}
