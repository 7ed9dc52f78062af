package org.climbwatch.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.climbwatch.alarm.AlarmState;
import org.climbwatch.firing.Phase;
import org.climbwatch.watch.Judged;

/** What the status says, as metrics. A number that is not known now is left out, not zero. */
final class StatusMetrics {
  private final Status status;
  private final List<Metric> metrics = new ArrayList<>();

  private StatusMetrics(Status status) {
    this.status = status;
  }

  static List<Metric> of(Status status) {
    StatusMetrics made = new StatusMetrics(status);
    made.probes();
    made.kiln();
    return made.metrics;
  }

  private void probes() {
    of(
        "temperature_celsius",
        "celsius",
        "Temperature at the probe.",
        (now, device) -> now.map(Judged::temperatureC).orElse(OptionalDouble.empty()));
    of(
        "temperature_uncertainty_celsius",
        "celsius",
        "Its expanded uncertainty, k = 2.",
        (now, device) -> now.map(Judged::uncertaintyC).orElse(OptionalDouble.empty()));
    of(
        "climb_celsius_per_hour",
        "celsius_per_hour",
        "Rate of rise; negative while falling.",
        (now, device) ->
            now.flatMap(Judged::climb)
                .map(climb -> OptionalDouble.of(climb.cPerHour()))
                .orElse(OptionalDouble.empty()));
    of(
        "reading_age_seconds",
        "seconds",
        "Time since the newest reading.",
        (now, device) -> device.latestAgeS());
    of(
        "probe_good",
        "",
        "1 while the probe gives a temperature.",
        (now, device) -> OptionalDouble.of(now.isPresent() && now.get().fault().isEmpty() ? 1 : 0));
  }

  /** What is known of a probe now, as one number. */
  private interface Figure {
    OptionalDouble of(Optional<Judged> now, Status.Device device);
  }

  private void of(String name, String unit, String help, Figure figure) {
    List<Metric.Sample> samples = new ArrayList<>();
    for (int i = 0; i < status.devices().size(); i++) {
      Status.Device device = status.devices().get(i);
      Optional<Judged> now =
          status.stale(device) ? Optional.empty() : status.view().probes().get(i).latest();
      OptionalDouble value = figure.of(now, device);
      if (value.isPresent()) {
        samples.add(new Metric.Sample(Map.of("probe", device.probe()), value.getAsDouble()));
      }
    }
    metrics.add(new Metric("climbwatch_" + name, Metric.Kind.GAUGE, unit, help, samples));
  }

  private void kiln() {
    List<Metric.Sample> phases = new ArrayList<>();
    for (Phase phase : Phase.values()) {
      phases.add(
          new Metric.Sample(Map.of("phase", phase.word()), status.view().phase() == phase ? 1 : 0));
    }
    metrics.add(
        new Metric("climbwatch_phase", Metric.Kind.GAUGE, "", "1 at the phase now.", phases));
    List<Metric.Sample> alarms = new ArrayList<>();
    for (AlarmState state : AlarmState.values()) {
      if (state != AlarmState.NORMAL) {
        alarms.add(new Metric.Sample(Map.of("state", state.word()), count(state)));
      }
    }
    metrics.add(new Metric("climbwatch_alarms", Metric.Kind.GAUGE, "", "Alarms by state.", alarms));
  }

  private long count(AlarmState state) {
    return state.stands()
        ? status.view().alarms().stream().filter(alarm -> alarm.state() == state).count()
        : status.view().watched().stream().filter(alarm -> alarm.state() == state).count();
  }
}
