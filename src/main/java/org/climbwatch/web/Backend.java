package org.climbwatch.web;

import java.io.IOException;
import java.io.OutputStream;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.climbwatch.alarm.Shelving;
import org.climbwatch.alarm.Signature;
import org.climbwatch.firing.Phase;
import org.climbwatch.reading.Moment;

/**
 * What the web asks of the daemon. Called from several threads at once.
 *
 * <p>A request that cannot be met because of what was asked is thrown as {@link Refused}; anything
 * else that is thrown is a fault of ours and leaves as a bare 500.
 */
public interface Backend {
  /** What is true now. */
  Status status();

  /** Wall time of a moment, by the best offset known for its boot. */
  Instant wallTime(Moment moment);

  /** All recorded firings, the newest first. */
  List<FiringSummary> firings();

  /** One firing, or empty when there is none of that number. */
  Optional<FiringSummary> firing(long id);

  /**
   * The curves of a firing's probes, the followed one first, reduced so that every peak is kept.
   *
   * @param by which calibration the temperatures are told with
   * @param points the most that are wanted of each, 10 to 20 000
   */
  List<CurveColumns> curves(long id, CorrectedBy by, int points);

  /** Writes the whole record of a firing as the contract's CSV and leaves the stream open. */
  void exportCsv(long id, CorrectedBy by, OutputStream out) throws IOException;

  /** The uncertainty of a probe's temperature now, itemised; empty for a name that is not known. */
  Optional<ProbeBudget> budget(String probe);

  /** What happened in a firing, the potter's notes among it, the oldest first. */
  List<EventLine> events(long id);

  /**
   * The potter begins a firing.
   *
   * @param name may be blank
   * @return the new firing's number
   */
  long begin(String name);

  /** The potter ends the firing. */
  void end(long id);

  /** The potter says what the kiln is meant to do: climb, hold, or cool. */
  void declare(long id, Phase phase);

  /** The potter writes a note; never blank. */
  void note(long id, String text);

  /**
   * The potter answers an alarm.
   *
   * @param alarmId an occurrence's id
   * @param by may be blank
   */
  void acknowledge(String alarmId, Signature by);

  /**
   * The potter puts an alarm aside for a time.
   *
   * @param alarmId an occurrence's id, or the name of an alarm that does not stand
   */
  void shelve(String alarmId, Shelving shelving);

  /** The potter takes an alarm off the shelf before its time. */
  void unshelve(String alarmId, Signature by);

  /** The potter has looked after a latched alarm. */
  void reset(String alarmId, Signature by);

  /** What each probe has been through, the followed one first. */
  List<ProbeLife> probes();

  /** Trying alarm settings on past firings. */
  Trials trials();

  /** Why readings do not arrive or are not stored; empty while all is well. */
  Optional<String> unwell();

  /** Counters and gauges of the daemon beside those that {@link #status} already tells. */
  List<Metric> metrics();

  /**
   * Tells of readings and events as they happen, until closed.
   *
   * @param listener returns at once and throws nothing
   */
  AutoCloseable listen(Consumer<Live> listener);
}
