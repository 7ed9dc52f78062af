package org.climbwatch.app.config;

import java.time.Duration;
import org.climbwatch.alarm.AlarmSettings;
import org.climbwatch.alarm.ClimbStalled;
import org.climbwatch.alarm.ClimbTooFast;
import org.climbwatch.alarm.Delays;
import org.climbwatch.alarm.Falling;
import org.climbwatch.alarm.OverTemperature;
import org.climbwatch.alarm.ProbeFault;
import org.climbwatch.alarm.ProbesApart;
import org.climbwatch.alarm.ReadingsStopped;

/** The keys of {@code [alarm]}: one table for each rule. */
final class AlarmReader {
  private final Section alarm;

  AlarmReader(Section alarm) {
    this.alarm = alarm;
  }

  AlarmSettings read() {
    AlarmSettings settings =
        new AlarmSettings(
            overTemperature(alarm.section("over_temperature")),
            climbTooFast(alarm.section("climb_too_fast")),
            climbStalled(alarm.section("climb_stalled")),
            falling(alarm.section("falling")),
            probeFault(alarm.section("probe_fault")),
            readingsStopped(alarm.section("readings_stopped")),
            probesApart(alarm.section("probes_apart")));
    alarm.refuseTheRest();
    return settings;
  }

  private static OverTemperature.Settings overTemperature(Section rule) {
    OverTemperature.Settings usual = OverTemperature.Settings.DEFAULT;
    return done(
        rule,
        new OverTemperature.Settings(
            rule.flag("enabled", usual.enabled()),
            rule.number("limit_c", usual.limitC(), 50, 1800),
            rule.number("deadband_c", usual.deadbandC(), 0, 100),
            delays(rule, usual.delays())));
  }

  private static ClimbTooFast.Settings climbTooFast(Section rule) {
    ClimbTooFast.Settings usual = ClimbTooFast.Settings.DEFAULT;
    return done(
        rule,
        new ClimbTooFast.Settings(
            rule.flag("enabled", usual.enabled()),
            rule.number("drying_limit_c_per_h", usual.dryingLimitCPerHour(), 10, 5000),
            rule.number("limit_c_per_h", usual.limitCPerHour(), 10, 5000),
            delays(rule, usual.delays())));
  }

  private static ClimbStalled.Settings climbStalled(Section rule) {
    ClimbStalled.Settings usual = ClimbStalled.Settings.DEFAULT;
    return done(
        rule,
        new ClimbStalled.Settings(
            rule.flag("enabled", usual.enabled()),
            rule.number("least_climb_c_per_h", usual.leastClimbCPerHour(), 1, 500),
            delays(rule, usual.delays())));
  }

  private static Falling.Settings falling(Section rule) {
    Falling.Settings usual = Falling.Settings.DEFAULT;
    return done(
        rule,
        new Falling.Settings(
            rule.flag("enabled", usual.enabled()),
            rule.number("fall_c_per_h", usual.fallCPerHour(), 10, 5000),
            rule.number("drop_c", usual.dropC(), 1, 100),
            delays(rule, usual.delays())));
  }

  private static ProbeFault.Settings probeFault(Section rule) {
    ProbeFault.Settings usual = ProbeFault.Settings.DEFAULT;
    return done(
        rule,
        new ProbeFault.Settings(
            rule.flag("enabled", usual.enabled()), delays(rule, usual.delays())));
  }

  private static ReadingsStopped.Settings readingsStopped(Section rule) {
    ReadingsStopped.Settings usual = ReadingsStopped.Settings.DEFAULT;
    return done(
        rule,
        new ReadingsStopped.Settings(
            rule.flag("enabled", usual.enabled()), delays(rule, usual.delays())));
  }

  private static ProbesApart.Settings probesApart(Section rule) {
    ProbesApart.Settings usual = ProbesApart.Settings.DEFAULT;
    return done(
        rule,
        new ProbesApart.Settings(
            rule.flag("enabled", usual.enabled()),
            rule.number("limit_c", usual.limitC(), 5, 500),
            rule.number("deadband_c", usual.deadbandC(), 0, 100),
            delays(rule, usual.delays())));
  }

  private static Delays delays(Section rule, Delays usual) {
    double longest = Delays.LONGEST.toSeconds();
    return new Delays(
        seconds(rule.number("on_delay_s", usual.on().toMillis() / 1000.0, 0, longest)),
        seconds(rule.number("off_delay_s", usual.off().toMillis() / 1000.0, 0, longest)));
  }

  private static Duration seconds(double seconds) {
    return Duration.ofMillis(Math.round(seconds * 1000));
  }

  private static <T> T done(Section rule, T settings) {
    rule.refuseTheRest();
    return settings;
  }
}
