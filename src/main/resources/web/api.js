// Requests to the daemon that served this page, and to nobody else.
import { element } from './words.js';

const API = '/api/v1';
const TIMEOUT_MS = 6000;
const KEPT = 'passphrase';

/** What the daemon said no to; the message is its own. */
export class Refusal extends Error {}

async function answer(response) {
  if (response.ok) {
    return response.json();
  }
  let problem = {};
  try {
    problem = await response.json();
  } catch {
    // not from Climbwatch: the status says what there is to say
  }
  const refusal = new Refusal(problem.detail || `The answer was ${response.status}.`);
  refusal.status = response.status;
  throw refusal;
}

export async function get(path) {
  return answer(
    await fetch(API + path, { cache: 'no-store', signal: AbortSignal.timeout(TIMEOUT_MS) }),
  );
}

/** Sends a change; asks for the passphrase when it is needed. */
export async function post(path, body = {}) {
  try {
    return await send(path, body);
  } catch (refusal) {
    if (refusal.status !== 401) {
      throw refusal;
    }
    sessionStorage.setItem(KEPT, await askPassphrase(refusal.message));
    return post(path, body);
  }
}

async function send(path, body) {
  const headers = { 'Content-Type': 'application/json' };
  const passphrase = sessionStorage.getItem(KEPT);
  if (passphrase) {
    headers.Authorization = `Bearer ${passphrase}`;
  }
  return answer(
    await fetch(API + path, {
      method: 'POST',
      headers,
      body: JSON.stringify(body),
      signal: AbortSignal.timeout(TIMEOUT_MS),
    }),
  );
}

function askPassphrase(why) {
  const dialog = element('passphrase-dialog');
  const form = element('passphrase-form');
  const input = element('passphrase');
  sessionStorage.removeItem(KEPT);
  element('passphrase-why').textContent = why;
  input.value = '';
  dialog.showModal();
  return new Promise((resolve, reject) => {
    const giveUp = () => {
      form.onsubmit = null;
      reject(new Refusal('Nothing was changed: the passphrase is needed.'));
    };
    form.onsubmit = (event) => {
      event.preventDefault();
      dialog.onclose = null;
      dialog.close();
      // a header carries plain ASCII only; anything else cannot be the passphrase
      if (/^[ -~]+$/.test(input.value.trim())) {
        resolve(input.value.trim());
      } else {
        giveUp();
      }
    };
    dialog.onclose = giveUp;
    element('passphrase-cancel').onclick = () => dialog.close();
  });
}
