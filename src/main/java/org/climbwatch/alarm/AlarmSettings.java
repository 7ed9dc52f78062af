package org.climbwatch.alarm;

/** The settings of all rules. Each rule documents and checks its own. */
public record AlarmSettings(
    OverTemperature.Settings overTemperature,
    ClimbTooFast.Settings climbTooFast,
    ClimbStalled.Settings climbStalled,
    Falling.Settings falling,
    ProbeFault.Settings probeFault,
    ReadingsStopped.Settings readingsStopped,
    ProbesApart.Settings probesApart) {
  public static final AlarmSettings DEFAULT =
      new AlarmSettings(
          OverTemperature.Settings.DEFAULT,
          ClimbTooFast.Settings.DEFAULT,
          ClimbStalled.Settings.DEFAULT,
          Falling.Settings.DEFAULT,
          ProbeFault.Settings.DEFAULT,
          ReadingsStopped.Settings.DEFAULT,
          ProbesApart.Settings.DEFAULT);
}
