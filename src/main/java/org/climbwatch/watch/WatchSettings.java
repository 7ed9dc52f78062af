package org.climbwatch.watch;

import java.util.OptionalDouble;
import org.climbwatch.alarm.AlarmSettings;
import org.climbwatch.firing.FiringSettings;
import org.climbwatch.signal.SignalSettings;

/**
 * All settings that the core's events depend on.
 *
 * @param kiln its name, for messages
 * @param targetC °C that a firing is meant to reach
 */
public record WatchSettings(
    String kiln,
    OptionalDouble targetC,
    ProbeSettings probe,
    SignalSettings signal,
    FiringSettings firing,
    AlarmSettings alarm) {}
