// What a trial has shown: in one line for the alarm that was tried, then firing by firing.
import { firingName, hoursMinutes, lit, make, sentences, span } from './words.js';

const CHANGES = [
  ['earlier', 'earlier'],
  ['later', 'later'],
  ['new', 'new'],
  ['gone', 'gone'],
  ['same', 'at the same time'],
];

const NEVER = 'did not come, and would not with these limits';

const ENDS = {
  cancelled: 'Ended before its time',
  out_of_time: 'Ended because it took too long',
  failed: 'A record could not be read, the log says more',
};

/**
 * The elements that tell of a trial that is over.
 * @param title gives that of an alarm's kind
 */
export function told(trial, title) {
  const made = [make('p', 'trial-sum', headline(trial))];
  const all = trial.results.flatMap((result) => result.differences);
  for (const kind of trial.rules) {
    const own = all.filter((one) => one.kind === kind);
    made.push(make('p', '', `${title(kind)}: ${own.length === 0 ? NEVER : counted(own)}.`));
  }
  const others = all.filter((one) => !trial.rules.includes(one.kind));
  if (others.length > 0) {
    made.push(make('p', '', `Other alarms: ${counted(others)}.`));
    if (others.some((one) => one.change !== 'same')) {
      made.push(
        make(
          'p',
          'hint',
          'Other alarms differ where today’s target, plan or limits are not those of that day, or ' +
            'where one alarm speaks in place of another.',
        ),
      );
    }
  }
  if (all.length > 0) {
    made.push(
      make(
        'p',
        'hint',
        'Times are hours:minutes since lighting. What is compared is when an alarm comes, not how ' +
          'long it stands.',
      ),
    );
  }
  made.push(...trial.results.map((result) => firing(result, trial.rules)));
  return made;
}

function headline(trial) {
  const firings = trial.firings === 1 ? '1 firing' : `${trial.firings} firings`;
  return trial.state === 'done'
    ? `Tried on ${firings}.`
    : `${ENDS[trial.state]}: ${trial.tried} of ${firings} tried.`;
}

function counted(differences) {
  return CHANGES.map(([change, word]) => [
    differences.filter((one) => one.change === change).length,
    word,
  ])
    .filter(([count]) => count > 0)
    .map(([count, word]) => `${count} ${word}`)
    .join(', ');
}

function firing(result, rules) {
  const made = make('section', 'trial-firing');
  const named = firingName({ id: result.firing, name: result.name });
  made.append(make('h3', '', `${named}, lit ${lit(result.began)}`));
  const shown = result.differences.filter(
    (one) => rules.includes(one.kind) || one.change !== 'same',
  );
  if (shown.length > 0) {
    made.append(table(shown));
  }
  const rest = result.differences.length - shown.length;
  if (rest > 0) {
    const more = shown.length === 0 ? '' : ' more';
    made.append(make('p', 'hint', `${rest}${more} ${rest === 1 ? 'alarm' : 'alarms'}, at the same time.`));
  } else if (shown.length === 0) {
    made.append(make('p', 'hint', 'No alarm then, and none with these limits.'));
  }
  return made;
}

function table(differences) {
  const made = make('table', 'trial-table');
  const head = make('tr', '');
  for (const title of ['Alarm', 'Came at', 'Would come at', 'Change']) {
    const cell = make('th', '', title);
    cell.scope = 'col';
    head.append(cell);
  }
  const heads = make('thead', '');
  heads.append(head);
  const rows = make('tbody', '');
  rows.append(...differences.map(row));
  made.append(heads, rows);
  return made;
}

function row(one) {
  const made = make('tr', `change-${one.change}`);
  const title = make('th', '', one.title + (one.probe === null ? '' : ` (${one.probe})`));
  title.scope = 'row';
  made.append(
    title,
    time('came at ', one.was_s),
    time(one.was_s === null ? 'would come at ' : ' · would come at ', one.would_s),
    change(one),
  );
  return made;
}

/** @param words are shown where the table's head is not */
function time(words, seconds) {
  const made = make('td', seconds === null ? 'never' : '', seconds === null ? '–' : '');
  if (seconds !== null) {
    made.append(make('span', 'narrow-only', words), hoursMinutes(seconds));
  }
  return made;
}

function change(one) {
  const made = make('td', 'change');
  made.append(make('span', 'change-words', words(one)));
  if (one.change === 'new' || one.change === 'gone') {
    made.append(make('span', 'hint', sentences(one.message)[0]));
  }
  return made;
}

function words(one) {
  const by = span(Math.abs((one.would_s ?? 0) - (one.was_s ?? 0)));
  return {
    earlier: `would have come ${by} earlier`,
    later: `would have come ${by} later`,
    new: 'would have come; it did not',
    gone: 'would not have come',
    same: 'would have come at the same time',
  }[one.change];
}
