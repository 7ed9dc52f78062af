// Where the fire is heading, each figure with its interval, or that it is not known yet.
import { clock, element, say, span, whole } from './words.js';

const UNKNOWN = 'not known yet';

export function show(status) {
  const { forecast } = status;
  element('ahead').hidden = status.firing === null || forecast.reason === 'not_climbing';
  if (forecast.reason !== null) {
    say('arrival', UNKNOWN);
    say('level', UNKNOWN);
    say('ahead-line', `Not known yet: ${forecast.reason_text}.`);
    return;
  }
  say('arrival', arrival(status, forecast));
  say('level', level(forecast));
  say('ahead-line', 'An estimate from the curve alone. In brackets: where it may well lie.');
}

function arrival(status, forecast) {
  if (status.target_c === null) {
    return 'no target set';
  }
  if (status.probes[0].temperature_c >= status.target_c) {
    return 'now';
  }
  if (forecast.arrival_at === null) {
    return forecast.arrival_low_s === null
      ? 'not with this fire'
      : `perhaps not (at the earliest ${clock(forecast.arrival_low_at)})`;
  }
  const low = clock(forecast.arrival_low_at);
  const interval =
    forecast.arrival_high_at === null
      ? `${low} at the earliest, and perhaps not at all`
      : `${low} to ${clock(forecast.arrival_high_at)}`;
  return `${clock(forecast.arrival_at)}, in ${span(forecast.arrival_s)} (${interval})`;
}

function level(forecast) {
  if (forecast.level_c === null) {
    return forecast.level_low_c === null
      ? 'no level in sight'
      : `no level in sight (above ${whole(forecast.level_low_c)} °C)`;
  }
  const low = forecast.level_low_c === null ? 'far below' : whole(forecast.level_low_c);
  const interval =
    forecast.level_high_c === null ? `${low} or more` : `${low} to ${whole(forecast.level_high_c)}`;
  return `${whole(forecast.level_c)} °C (${interval})`;
}
