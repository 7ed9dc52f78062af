package org.climbwatch.source.recorded;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.climbwatch.reading.Fault;
import org.climbwatch.reading.Moment;
import org.climbwatch.reading.Reading;
import org.climbwatch.source.Source;
import org.climbwatch.watch.Input;

/**
 * Plays a recording's readings as if they came from a probe now. After its end it is silent; from a
 * row on that cannot be used it is garbled and says why.
 */
public final class RecordedSource implements Source {
  private final String probe;
  private final Path file;
  private final long originMillis;
  private final Recording recording;
  private Optional<Reading> ahead = Optional.empty();
  private long firstMillis = Long.MIN_VALUE;
  private boolean over;
  private Optional<String> trouble = Optional.empty();

  /**
   * @param originMillis monotonic milliseconds at which the first reading is due
   * @throws BadRecording when the file cannot be used
   */
  public RecordedSource(String probe, Path file, long originMillis) {
    this.probe = probe;
    this.file = file;
    this.originMillis = originMillis;
    recording = new Recording(file, List.of(probe));
  }

  @Override
  public Optional<Reading> read(Moment at) {
    Optional<Reading> due = Optional.empty();
    while (!over && (ahead.isPresent() || fetch()) && dueMillis() <= at.millis()) {
      due = ahead;
      ahead = Optional.empty();
    }
    if (due.isPresent()) {
      return due.map(reading -> movedTo(at, reading));
    }
    Fault atEnd = trouble.isPresent() ? Fault.GARBLED : Fault.NO_ANSWER;
    return over ? Optional.of(Reading.faulty(at, probe, atEnd)) : Optional.empty();
  }

  @Override
  public String describe() {
    return "recording " + file + (over ? ", " + trouble.orElse("over") : "");
  }

  @Override
  public void close() {
    recording.close();
  }

  private boolean fetch() {
    try {
      ahead = nextReading();
    } catch (BadRecording bad) {
      trouble = Optional.of(bad.getMessage());
      ahead = Optional.empty();
    }
    over = ahead.isEmpty();
    if (!over && firstMillis == Long.MIN_VALUE) {
      firstMillis = ahead.get().at().millis();
    }
    return !over;
  }

  private Optional<Reading> nextReading() {
    Optional<Input> next = recording.next();
    while (next.isPresent() && !(next.get() instanceof Input.Measured)) {
      next = recording.next();
    }
    return next.map(input -> ((Input.Measured) input).reading());
  }

  private long dueMillis() {
    return originMillis + ahead.orElseThrow().at().millis() - firstMillis;
  }

  private Reading movedTo(Moment at, Reading reading) {
    if (reading instanceof Reading.Emf emf) {
      return Reading.emf(
          at, probe, emf.emfMv(), emf.coldJunctionC(), emf.samples(), emf.spreadMv());
    }
    return reading instanceof Reading.Linearised linearised
        ? Reading.linearised(
            at,
            probe,
            linearised.temperatureC(),
            linearised.coldJunctionC(),
            linearised.samples(),
            linearised.spreadC())
        : Reading.faulty(at, probe, ((Reading.Faulty) reading).fault());
  }
}
