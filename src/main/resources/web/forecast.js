// Where the fire is heading, each figure with its interval, or that it is not known yet.
import { clock, element, say, span, whole } from './words.js';

const UNKNOWN = { value: 'not known yet', interval: '' };

export function show(status) {
  const { forecast } = status;
  const known = forecast.reason === null;
  element('ahead').hidden = status.firing === null || forecast.reason === 'not_climbing';
  tell('arrival', known ? arrival(status, forecast) : UNKNOWN);
  tell('level', known ? level(forecast) : UNKNOWN);
  say(
    'ahead-line',
    known
      ? 'An estimate from the curve alone, with where it may well lie.'
      : `Not known yet: ${forecast.reason_text}.`
  );
}

function tell(id, { value, interval }) {
  say(id, value);
  say(`${id}-interval`, interval);
}

function arrival(status, forecast) {
  if (status.target_c === null) {
    return { value: 'no target set', interval: '' };
  }
  if (status.probes[0].temperature_c >= status.target_c) {
    return { value: 'now', interval: '' };
  }
  const low = clock(forecast.arrival_low_at);
  if (forecast.arrival_at === null) {
    return forecast.arrival_low_s === null
      ? { value: 'not with this fire', interval: '' }
      : { value: 'perhaps not', interval: `${low} at the earliest` };
  }
  return {
    value: `${clock(forecast.arrival_at)}, in ${span(forecast.arrival_s)}`,
    interval:
      forecast.arrival_high_at === null
        ? `${low} at the earliest, perhaps not at all`
        : `${low} to ${clock(forecast.arrival_high_at)}`,
  };
}

function level(forecast) {
  const low = forecast.level_low_c === null ? '' : `${whole(forecast.level_low_c)} °C`;
  const orMore = low === '' ? '' : `${low} or more`;
  if (forecast.level_c === null) {
    return { value: 'no level in sight', interval: orMore };
  }
  const high = forecast.level_high_c === null ? null : `${whole(forecast.level_high_c)} °C`;
  return {
    value: `${whole(forecast.level_c)} °C`,
    interval: high === null ? orMore : low === '' ? `${high} or less` : `${low} to ${high}`,
  };
}
