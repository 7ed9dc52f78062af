package org.climbwatch.source.scpi;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.climbwatch.source.port.PortSettings;

/**
 * What an instrument is asked, and what its answer is.
 *
 * @param setup commands sent once after each opening of the line, in order; none may be a query
 * @param query asks for the value, for instance {@code MEAS:VOLT:DC?}
 * @param overloadIsOpenCircuit whether the instrument answers infinity for a broken couple; else
 *     that is merely out of range
 * @param pause from one look to the next, 0.1 to 60 s
 * @param timeout for one answer, 0.1 to 60 s; a slow integration takes seconds
 * @param silence without an answer until the reading is a fault, 1 s to 10 min
 */
public record ScpiSettings(
    PortSettings line,
    List<String> setup,
    String query,
    Meaning meaning,
    ColdJunctionFrom coldJunction,
    boolean overloadIsOpenCircuit,
    Duration pause,
    Duration timeout,
    Duration silence) {
  public static final Duration DEFAULT_PAUSE = Duration.ofMillis(500);
  public static final Duration DEFAULT_TIMEOUT = Duration.ofSeconds(3);
  public static final Duration DEFAULT_SILENCE = Duration.ofSeconds(10);

  /** What the number answered is. */
  public enum Meaning {
    /** °C, linearised by the instrument. */
    TEMPERATURE_C,
    /** V between the terminals: the unit that the standard prescribes. */
    EMF_V,
    /** mV between the terminals. */
    EMF_MV
  }

  /**
   * Where the temperature of the terminals comes from.
   *
   * @param query asks the instrument for it, °C
   * @param fixedC °C, where it is kept or known otherwise
   */
  public record ColdJunctionFrom(Optional<String> query, OptionalDouble fixedC) {
    /** Not told; fit for a temperature, which the instrument has compensated itself. */
    public static final ColdJunctionFrom NOWHERE =
        new ColdJunctionFrom(Optional.empty(), OptionalDouble.empty());
  }

  public ScpiSettings {
    requireQuery(query);
    coldJunction.query().ifPresent(ScpiSettings::requireQuery);
    for (String command : setup) {
      if (isQuery(command)) {
        throw new IllegalArgumentException("a setup command asks nothing, was " + command);
      }
    }
    if (meaning != Meaning.TEMPERATURE_C && coldJunction.equals(ColdJunctionFrom.NOWHERE)) {
      throw new IllegalArgumentException("an emf needs its cold junction: a query or fixed");
    }
    setup = List.copyOf(setup);
  }

  /** Whether a message is one query, so that one answer comes. */
  public static boolean isQuery(String message) {
    int mark = message.indexOf('?');
    return mark > 0 && message.indexOf(';') < 0 && message.indexOf('?', mark + 1) < 0;
  }

  private static void requireQuery(String message) {
    if (!isQuery(message)) {
      throw new IllegalArgumentException("a query holds one ? and no ; but was " + message);
    }
  }
}
