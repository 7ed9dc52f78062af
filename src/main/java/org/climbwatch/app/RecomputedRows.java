package org.climbwatch.app;

import java.io.IOException;
import java.util.Arrays;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToLongFunction;
import java.util.function.UnaryOperator;
import org.climbwatch.journal.Firings;
import org.climbwatch.journal.RecordedDeed;
import org.climbwatch.journal.RowSink;
import org.climbwatch.reading.Moment;
import org.climbwatch.watch.Input;
import org.climbwatch.watch.Judged;
import org.climbwatch.watch.WatchSettings;

/**
 * A firing's rows with temperature, uncertainty and climb as they follow from the raw signal under
 * other corrections, by the same core. All else stays as recorded, phases and events among it.
 */
final class RecomputedRows implements RowSink {
  private static final int COLUMNS = 3;

  private final Recomputation recomputation;
  private final ToLongFunction<Moment> elapsedMs;
  private final RowSink to;
  private int[] numbers = new int[COLUMNS * 4096];
  private int size;
  private int next;

  private RecomputedRows(
      Recomputation recomputation, ToLongFunction<Moment> elapsedMs, RowSink to) {
    this.recomputation = recomputation;
    this.elapsedMs = elapsedMs;
    this.to = to;
  }

  /**
   * Hands out the rows of a firing.
   *
   * @param change puts other corrections into the settings that were in force
   * @param to takes the rows
   */
  static void stream(Firings firings, long id, UnaryOperator<WatchSettings> change, RowSink to)
      throws IOException {
    RecomputedRows rows = new RecomputedRows(new Recomputation(change), firings.elapsedMs(id), to);
    firings.inputs(id, new TextCodec(), rows::take);
    firings.rows(id, rows);
  }

  private void take(Input input) {
    Optional<Judged> judged = recomputation.take(input);
    if (input instanceof Input.Measured measured
        && elapsedMs.applyAsLong(measured.reading().at()) >= 0) {
      add(judged);
    }
  }

  /** A reading of a probe that the settings do not name has no temperature. */
  private void add(Optional<Judged> judged) {
    if (size == numbers.length) {
      numbers = Arrays.copyOf(numbers, size * 2);
    }
    numbers[size++] = judged.map(one -> steps(one.temperatureC(), 1e3)).orElse(NONE);
    numbers[size++] = judged.map(one -> steps(one.uncertaintyC(), 1e2)).orElse(NONE);
    numbers[size++] =
        judged
            .flatMap(Judged::climb)
            .map(climb -> steps(OptionalDouble.of(climb.cPerHour()), 10))
            .orElse(NONE);
  }

  /** On the record's grid. */
  private static int steps(OptionalDouble value, double stepsPerUnit) {
    return value.isEmpty() ? NONE : (int) Math.rint(value.getAsDouble() * stepsPerUnit);
  }

  @Override
  public void reading(
      long wallMs,
      long elapsedMs,
      String probe,
      int temperatureMilliC,
      int uncertaintyCentiC,
      int climbDeciCPerHour,
      int emfTenthUv,
      int coldJunctionMilliC,
      String quality,
      String phase,
      int samples,
      int spreadTenthUv,
      int spreadMilliC)
      throws IOException {
    if (next == size) {
      // the daemon has written it since the others were computed
      return;
    }
    to.reading(
        wallMs,
        elapsedMs,
        probe,
        numbers[next],
        numbers[next + 1],
        numbers[next + 2],
        emfTenthUv,
        coldJunctionMilliC,
        quality,
        phase,
        samples,
        spreadTenthUv,
        spreadMilliC);
    next += COLUMNS;
  }

  @Override
  public void deed(RecordedDeed deed, String phase) throws IOException {
    to.deed(deed, phase);
  }
}
