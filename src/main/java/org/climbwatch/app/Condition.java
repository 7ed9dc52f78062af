package org.climbwatch.app;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.climbwatch.app.config.ProbeSource;
import org.climbwatch.journal.Calibration;
import org.climbwatch.reading.Fault;
import org.climbwatch.reading.Moment;
import org.climbwatch.thermocouple.Budget;
import org.climbwatch.watch.Judged;
import org.climbwatch.watch.ProbeSettings;
import org.climbwatch.watch.View;
import org.climbwatch.web.ProbeBudget;
import org.climbwatch.web.Status;

/** How kiln, probes and daemon are at this moment. */
final class Condition {
  private final Engine engine;

  Condition(Engine engine) {
    this.engine = engine;
  }

  Status status() {
    View view = engine.view();
    return new Status(
        wallNow(),
        view,
        devices(view),
        staleAfterS(),
        engine.openFiringId(),
        elapsedS(view),
        notices());
  }

  /** Why the record has a hole at this moment: storage in trouble, or a probe that says nothing. */
  Optional<String> unwell() {
    Optional<String> trouble = engine.trouble();
    if (trouble.isPresent()) {
      return trouble;
    }
    View view = engine.view();
    List<Status.Device> devices = devices(view);
    for (int i = 0; i < devices.size(); i++) {
      Status.Device device = devices.get(i);
      if (device.latestAgeS().isEmpty() || device.latestAgeS().getAsDouble() > staleAfterS()) {
        return Optional.of("no reading from probe " + device.probe() + ": " + device.line());
      }
      Optional<Fault> silence =
          view.probes().get(i).latest().flatMap(Judged::fault).filter(Fault::silence);
      if (silence.isPresent()) {
        return Optional.of(
            "probe " + device.probe() + ": " + silence.get().plainly() + ": " + device.line());
      }
    }
    return Optional.empty();
  }

  private List<Status.Device> devices(View view) {
    List<String> lines = engine.sourceLines();
    List<Status.Device> devices = new ArrayList<>();
    for (int i = 0; i < lines.size(); i++) {
      View.ProbeView probe = view.probes().get(i);
      devices.add(
          new Status.Device(
              probe.name(), lines.get(i), ageS(probe.latest()), checked(probe.name())));
    }
    return devices;
  }

  /** How sure a probe's temperature is; nothing is said of a reading that has become too old. */
  Optional<ProbeBudget> budget(String name) {
    View view = engine.view();
    for (int i = 0; i < view.probes().size(); i++) {
      if (view.probes().get(i).name().equals(name)) {
        ProbeSettings settings = engine.configuration().watch().probes().get(i);
        Optional<Judged> latest = view.probes().get(i).latest();
        Optional<Budget> budget =
            latest
                .filter(judged -> ageS(latest).orElse(Double.MAX_VALUE) <= staleAfterS())
                .flatMap(judged -> settings.budget(judged.reading()));
        Optional<Calibration> calibration = calibration(name);
        return Optional.of(
            new ProbeBudget(
                name,
                budget,
                checked(name),
                calibration.map(one -> one.who() + ": " + one.note()).orElse("")));
      }
    }
    return Optional.empty();
  }

  private Optional<Calibration> calibration(String probe) {
    return Calibration.latest(engine.calibrations(), probe).filter(Calibration::checked);
  }

  private Optional<Instant> checked(String probe) {
    return calibration(probe).map(Calibration::at);
  }

  /** Real s since a reading of this boot. */
  private OptionalDouble ageS(Optional<Judged> latest) {
    Moment now = engine.now();
    return latest
        .map(judged -> judged.reading().at())
        .filter(now::sameBoot)
        .map(at -> OptionalDouble.of(now.millisSince(at) / 1000.0 / engine.time().speed()))
        .orElse(OptionalDouble.empty());
  }

  private double staleAfterS() {
    return Math.max(10, 3 * engine.configuration().interval().toMillis() / 1000.0);
  }

  /** s since the first reading of the firing that is on. */
  private OptionalDouble elapsedS(View view) {
    return view.firing().isEmpty()
        ? OptionalDouble.empty()
        : OptionalDouble.of(
            Math.max(0, wallNow().toEpochMilli() - engine.wallMillis(view.firing().get().since()))
                / 1000.0);
  }

  private List<String> notices() {
    ProbeSource source = engine.configuration().source();
    String speed =
        source.speed() == 1 ? "" : " at " + Math.round(source.speed()) + " times real speed";
    if (source instanceof ProbeSource.Model) {
      return List.of("No real kiln: the built-in kiln model" + speed + ".");
    }
    return source instanceof ProbeSource.Recording
        ? List.of("No real kiln: a recording is played" + speed + ".")
        : List.of();
  }

  private Instant wallNow() {
    return Instant.ofEpochMilli(engine.wallMillis(engine.now()));
  }
}
