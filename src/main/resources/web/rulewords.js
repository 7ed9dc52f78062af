// The settings of alarms in plain words. A key that has none here is told by its own name.

const PLAIN = {
  on_delay_s: 'It must hold for, before the alarm comes',
  off_delay_s: 'It must be gone for, before the alarm is over',
  limit_c: 'Limit',
  limit_c_per_h: 'Limit',
  deadband_c: 'It is over so far below the limit',
  from_c: 'Silent below',
};

/** What a key means for one alarm, where that is not the same for all. */
const OWN = {
  climb_too_fast: {
    drying_limit_c_per_h: 'Fastest while drying (steam)',
    burnout_limit_c_per_h: 'Fastest from there to 540 °C (organics)',
    quartz_limit_c_per_h: 'Fastest from 540 to 600 °C (quartz)',
    limit_c_per_h: 'Fastest above',
    glaze_limit_c_per_h: 'Fastest in the last stretch (glaze)',
    glaze_from_c: 'The last stretch begins at',
  },
  climb_stalled: {
    least_climb_c_per_h: 'A climb slower than this counts as stalled',
    patience_min: 'Silent after the turn to reduction (850 to 1050 °C), for',
  },
  stall_ahead: {
    least_climb_c_per_h: 'A climb slower than this counts as gone',
    look_ahead_min: 'When that comes within',
    latest_arrival_h: 'Or the target comes later than in',
    patience_min: 'Silent after the fire was turned down, for',
  },
  sagging: {
    sink_c_per_h: 'Sinking surely faster than',
    patience_min: 'Three times so fast after the turn to reduction, for',
  },
  falling: {
    fall_c_per_h: 'A fall at least so steep',
    drop_c: 'And so far below the peak of the last minutes',
  },
  probes_apart: { limit_c: 'Probes further apart than' },
  probe_too_hot: { deadband_c: 'It is over so far below the limit of the probe' },
  behind_plan: { limit_c: 'Further below the plan than' },
  ahead_of_plan: { limit_c: 'Further above the plan than' },
  cooling_too_fast: {
    limit_c_per_h: 'Fastest fall',
    quartz_limit_c_per_h: 'Fastest fall around 573 °C (quartz)',
    from_c: 'Looks below',
    to_c: 'And above',
  },
  safe_to_open: { below_c: 'Cool enough below' },
  probe_reversed: { fall_c: 'So far below the cold junction within an hour' },
  probe_stuck: { unmoved_s: 'Without any move for' },
  probe_noisy: { limit_c: 'Scatter from one reading to the next (standard deviation)' },
  looks_scatter: { limit_c: 'Scatter within a reading (standard deviation)' },
  probe_jumps: { jumps: 'Jumps within 15 min' },
  cold_kiln_disagrees: {
    above_c: 'Cold kiln above the cold junction by',
    below_c: 'Cold kiln below the cold junction by',
  },
  cold_junction_hot: { limit_c: 'Amplifier hotter than' },
  cold_junction_unsteady: { limit_c_per_min: 'Moving faster than' },
  storage_low: { least_free_mb: 'Less free space for the record than' },
  clock_untrusted: { jump_s: 'The clock jumps by more than' },
};

/** By the end of a key; the longest first. */
const UNITS = [
  ['_c_per_min', '°C/min'],
  ['_c_per_h', '°C/h'],
  ['_min', 'min'],
  ['_mb', 'MB'],
  ['_c', '°C'],
  ['_h', 'h'],
  ['_s', 's'],
];

/** A setting's meaning in a few words. */
export function meaning(rule, key) {
  const end = UNITS.find(([ending]) => key.endsWith(ending));
  const bare = end ? key.slice(0, -end[0].length) : key;
  return OWN[rule]?.[key] ?? PLAIN[key] ?? bare.replaceAll('_', ' ');
}

/** Its unit; empty for a count. */
export function unit(key) {
  return UNITS.find(([ending]) => key.endsWith(ending))?.[1] ?? '';
}
