// A trial at work, from its beginning to what came of it: our own, or the one that is in our way.
import { element, make, say, span } from './words.js';
import { get, post, Refusal } from './api.js';
import { told } from './trialresult.js';

const LOOK_MS = 400;
const KEPT = 'trial';
const SOMEBODY_ELSES = 'This trial was begun by somebody else, or in another window.';
const OVER = 'The other trial is over: yours can begin now.';
const NO_MORE =
  'That trial is not there any more: Climbwatch was started again, or too many have come since. ' +
  'Try these limits once more.';

let title = null; // gives that of an alarm's kind
let showBusy = null; // is told whether a trial is at work
let followed = null; // the trial that is at work, and whether it is mine
let shown = null; // the trial whose result stands, and whether it is mine

export function wire(titleOf, whenBusy) {
  title = titleOf;
  showBusy = whenBusy;
  element('trial-cancel').addEventListener('click', () =>
    tellIfRefused(() => post(`/trials/${followed.trial.id}/cancel`)),
  );
  element('trial-csv').addEventListener('click', download);
}

export function busy() {
  return followed !== null;
}

/** Runs something and says what came of it; a refusal in its own words. */
export async function tellIfRefused(run) {
  say('trial-said', '');
  try {
    await run();
  } catch (problem) {
    say(
      'trial-said',
      problem instanceof Refusal ? problem.message : 'Climbwatch did not answer. Try again.',
    );
  }
}

/** Begins a trial; where another is at work, that one is looked after instead. */
export async function begin(order) {
  try {
    follow(await post('/trials', order), true);
  } catch (problem) {
    if (problem.status !== 409 || (await followAnother())) {
      throw problem;
    }
    // that one has ended in between
    follow(await post('/trials', order), true);
  }
}

/** Takes up the trial of this window again that was on or had ended before the page was loaded. */
export async function resume() {
  const kept = JSON.parse(sessionStorage.getItem(KEPT));
  if (kept === null) {
    return false;
  }
  const trial = await look(kept);
  if (trial) {
    follow(trial, true);
  }
  return Boolean(trial);
}

/** Looks after the trial that is at work, if one is. */
export async function followAnother() {
  const { trials } = await get('/trials');
  if (trials.length === 0 || trials[0].state !== 'running') {
    return false;
  }
  follow(await get(`/trials/${trials[0].id}`), false);
  return true;
}

function follow(trial, mine) {
  if (busy()) {
    return;
  }
  followed = { trial, mine };
  if (mine) {
    sessionStorage.setItem(KEPT, JSON.stringify({ id: trial.id, toml: trial.toml }));
    element('trial-result').hidden = true;
    shown = null;
  }
  goOn(trial);
}

async function goOn(trial) {
  if (trial === undefined) {
    say('trial-said', NO_MORE);
    end();
  } else if (trial !== null && trial.state !== 'running') {
    const { mine } = followed;
    end();
    over(trial, mine);
  } else {
    if (trial !== null) {
      progress(trial, followed.mine);
    }
    setTimeout(async () => goOn(await look(followed.trial)), LOOK_MS);
  }
}

/**
 * A trial as it stands; null without an answer, which the banner tells; undefined if it is no more.
 * Numbers begin again with the daemon, so what is tried must be the same too.
 */
async function look(known) {
  try {
    const trial = await get(`/trials/${known.id}`);
    return trial.toml === known.toml ? trial : undefined;
  } catch (problem) {
    return problem instanceof Refusal ? undefined : null;
  }
}

function progress(trial, mine) {
  element('trial-running').hidden = false;
  showBusy(true);
  element('trial-bar').max = trial.firings;
  element('trial-bar').value = trial.tried;
  const whose = mine ? '' : `Another trial (${trial.rules.map(title).join(', ')}): `;
  say('trial-so-far', `${whose}${trial.tried} of ${trial.firings} done, ${span(trial.took_s)}`);
}

function end() {
  followed = null;
  element('trial-running').hidden = true;
  showBusy(false);
}

function over(trial, mine) {
  if (!mine) {
    say('trial-said', OVER);
  }
  // what is my own stays in sight
  if (mine || shown === null || !shown.mine) {
    shown = { trial, mine };
    result(trial, mine);
  }
}

function result(trial, mine) {
  const whose = mine ? [] : [make('p', 'hint', SOMEBODY_ELSES)];
  element('trial-told').replaceChildren(...whose, ...told(trial, title));
  element('trial-csv').href = `/api/v1/trials/${trial.id}/differences.csv`;
  element('trial-csv').hidden = trial.tried === 0;
  say('trial-tables', trial.rules.map((kind) => `[alarm.${kind}]`).join(', '));
  say('trial-toml', trial.toml);
  element('trial-result').hidden = false;
}

/** A link would open whatever the daemon answers, also that there is no such trial any more. */
async function download(event) {
  event.preventDefault();
  const { trial } = shown;
  await tellIfRefused(async () => {
    const now = await look(trial);
    if (now === null) {
      throw new Error('no answer');
    }
    // of another trial under the same number the results differ, or its time
    if (JSON.stringify(now) !== JSON.stringify(trial)) {
      element('trial-csv').hidden = true;
      throw new Refusal(NO_MORE);
    }
    const link = make('a', '');
    link.href = element('trial-csv').href;
    link.download = '';
    link.click();
  });
}
