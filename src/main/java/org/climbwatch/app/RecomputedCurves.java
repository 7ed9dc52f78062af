package org.climbwatch.app;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToLongFunction;
import java.util.function.UnaryOperator;
import org.climbwatch.journal.CurveCollector;
import org.climbwatch.journal.Firings;
import org.climbwatch.journal.ProbeCurve;
import org.climbwatch.reading.Moment;
import org.climbwatch.watch.Input;
import org.climbwatch.watch.Judged;
import org.climbwatch.watch.WatchSettings;

/** The curves of a firing's probes as they follow from the raw signal under other corrections. */
final class RecomputedCurves {
  private final Map<String, CurveCollector> ofProbes = new LinkedHashMap<>();
  private final Recomputation recomputation;
  private final ToLongFunction<Moment> elapsedMs;

  private RecomputedCurves(Recomputation recomputation, ToLongFunction<Moment> elapsedMs) {
    this.recomputation = recomputation;
    this.elapsedMs = elapsedMs;
  }

  /**
   * Those of a firing, in the order of its recorded ones.
   *
   * @param change puts other corrections into the settings that were in force
   * @param points the most of each, 8 to 20 000
   */
  static List<ProbeCurve> of(
      Firings firings, long id, UnaryOperator<WatchSettings> change, int points) {
    RecomputedCurves curves =
        new RecomputedCurves(new Recomputation(change), firings.elapsedMs(id));
    for (ProbeCurve recorded : firings.curves(id, points)) {
      curves.ofProbes.put(recorded.probe(), new CurveCollector());
    }
    firings.inputs(id, new TextCodec(), curves::take);
    return curves.ofProbes.entrySet().stream()
        .map(one -> new ProbeCurve(one.getKey(), one.getValue().curve(points)))
        .toList();
  }

  private void take(Input input) {
    Optional<Judged> judged = recomputation.take(input);
    if (!(input instanceof Input.Measured measured) || judged.isEmpty()) {
      return;
    }
    Moment at = measured.reading().at();
    long elapsed = elapsedMs.applyAsLong(at);
    CurveCollector curve = ofProbes.get(measured.reading().probe());
    if (elapsed < 0 || curve == null) {
      return;
    }
    Judged one = judged.get();
    if (one.temperatureC().isEmpty()) {
      curve.fault();
    } else if (!one.spike()) {
      curve.good(at.boot(), at.millis(), elapsed, one.temperatureC().getAsDouble());
    }
  }
}
