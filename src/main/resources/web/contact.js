// Hears from the daemon: a live stream, a status every few seconds, and a loud word when both fail.
import { element, say, span } from './words.js';
import { get } from './api.js';

const POLL_MS = 5000;
const SILENCE_MS = 12000;
const REOPEN_MS = 4000;
/** The slowest probe is read every 10 s; of a path that is gone one way a browser may hear nothing. */
const STREAM_SILENCE_MS = 30000;

/**
 * @param handlers status(document), reading(document), event(document), lost(isLost),
 *     silent(seconds without contact, 0 while there is), every second; missed() when the stream may
 *     have told something that was not heard
 */
export function listen(handlers) {
  let lastHeard = Date.now();
  let failing = false;
  let lost = false;
  let polling = false;
  let stream = null;
  let streamHeard = Date.now();

  function heard() {
    lastHeard = Date.now();
    failing = false;
    show();
  }

  function show() {
    const silentMs = Date.now() - lastHeard;
    const now = failing || silentMs > SILENCE_MS;
    element('contact').hidden = !now;
    if (now) {
      say(
        'contact',
        `No contact with Climbwatch for ${span(silentMs / 1000)}: what you see is old. ` +
          'Look at the kiln itself.',
      );
    }
    // a page that has slept has not looked for contact meanwhile
    handlers.silent(failing ? silentMs / 1000 : 0);
    if (now !== lost) {
      lost = now;
      handlers.lost(lost);
    }
  }

  async function poll() {
    if (polling) {
      return;
    }
    polling = true;
    try {
      const status = await get('/status');
      heard();
      if (Date.now() - streamHeard > STREAM_SILENCE_MS) {
        stream.close();
        open();
        handlers.missed();
      }
      handlers.status(status);
    } catch {
      failing = true;
      show();
    } finally {
      polling = false;
    }
  }

  function open() {
    const opened = new EventSource('/api/v1/live');
    stream = opened;
    streamHeard = Date.now();
    opened.onopen = poll;
    opened.onerror = () => {
      poll();
      // a browser comes back by itself unless the stream was refused
      if (opened.readyState === EventSource.CLOSED) {
        setTimeout(() => opened === stream && open(), REOPEN_MS);
      }
    };
    opened.addEventListener('reading', (message) => {
      streamHeard = Date.now();
      heard();
      handlers.reading(JSON.parse(message.data));
    });
    opened.addEventListener('event', (message) => {
      streamHeard = Date.now();
      heard();
      handlers.event(JSON.parse(message.data));
      poll();
    });
  }

  open();
  poll();
  setInterval(poll, POLL_MS);
  setInterval(show, 1000);
  document.addEventListener('visibilitychange', () => document.hidden || poll());
  return { poll };
}
