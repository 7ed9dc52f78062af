// The number, or the reason why there is none, and what belongs beside it.
import {
  day,
  direction,
  element,
  hoursMinutes,
  phases,
  say,
  signed,
  span,
  whole,
} from './words.js';
import { foremost } from './alarms.js';

/**
 * @param probe of the status or of a reading
 * @param silentS s since that probe's newest reading, as far as the page knows
 */
export function show(status, probe, silentS) {
  const stale = silentS !== null && silentS > status.stale_after_s;
  const known = probe.temperature_c !== null && !stale;
  element('temperature').hidden = !known;
  element('no-temperature').hidden = known;
  if (known) {
    say('degrees', whole(probe.temperature_c));
    say('uncertainty', uncertainty(probe));
  } else {
    say('reason', reason(probe, silentS, stale));
    say('uncertainty', '');
  }
  climb(known ? probe : null);
  say('phase', phases[status.phase]);
  say('elapsed', status.firing ? `${hoursMinutes(status.firing.elapsed_s)} h` : '–');
  element('target-fact').hidden = status.target_c === null;
  say('target', status.target_c === null ? '' : `${whole(status.target_c)} °C`);
  say('probe-line', line(probe, known));
  element('uncertainty').href = `/uncertainty.html?probe=${encodeURIComponent(probe.name)}`;
  say('checked', checked(status, probe));
  head(status, probe, known);
  document.title = title(status, probe, known);
}

function uncertainty(probe) {
  return probe.uncertainty_c === null
    ? 'uncertainty not known'
    : `± ${Math.max(1, Math.round(probe.uncertainty_c))} °C`;
}

/** A reading does not tell it, the status does. */
function checked(status, probe) {
  const at = status.probes.find((one) => one.name === probe.name)?.checked;
  return at ? `Last checked ${day(at)}` : 'Never checked';
}

function reason(probe, silentS, stale) {
  if (stale) {
    return `no reading for ${span(silentS)}`;
  }
  return probe.quality === 'good'
    ? 'no reading yet'
    : probe.quality_text;
}

function climb(probe) {
  if (!probe || probe.climb_c_per_h === null) {
    say('climb', 'not known');
    return;
  }
  const { word, arrow } = direction(probe.climb_c_per_h, probe.climb_uncertainty_c_per_h);
  say(
    'climb',
    `${arrow} ${word} ${signed(probe.climb_c_per_h)} °C/h ` +
      `± ${Math.max(1, Math.round(probe.climb_uncertainty_c_per_h))}`,
  );
}

function line(probe, known) {
  const parts = [`Probe ${probe.name}`];
  if (known && probe.emf_mv !== null) {
    parts.push(`${probe.emf_mv.toFixed(3)} mV`);
  }
  if (known && probe.cold_junction_c !== null) {
    parts.push(`cold junction ${probe.cold_junction_c.toFixed(1)} °C`);
  }
  if (known && probe.spike) {
    parts.push('a single outlier, left out of the climb');
  }
  return parts.join(' · ');
}

/** The number once more, small, where alarms push the big one down. */
function head(status, probe, known) {
  element('head-number').hidden = status.alarms.length === 0;
  say('head-number', known ? `${whole(probe.temperature_c)} °C` : 'no temperature');
}

function title(status, probe, known) {
  const alarm = foremost(status.alarms);
  const number = known ? `${whole(probe.temperature_c)} °C` : 'no temperature';
  return `${alarm ? `⚠ ${alarm.title} · ` : ''}${number} · ${status.kiln}`;
}
