package org.climbwatch.thermocouple;

import java.util.ArrayList;
import java.util.List;

/**
 * The uncertainty of one temperature, itemised: what {@link Uncertainty#expandedC} adds up, line by
 * line, for the page and for whoever asks how the number was obtained.
 *
 * @param temperatureC °C, corrected
 * @param components all sources, also those that add nothing; what is not in the list was not
 *     counted
 * @param combinedC °C, root of the sum of the squares of the standard uncertainties
 * @param notes what the figure does not say by itself
 * @see "JCGM 100:2008 (GUM), 5.1.2, 6.2.1, 7.2.6"
 */
public record Budget(
    double temperatureC, List<Component> components, double combinedC, List<String> notes) {
  /** How the value of a source is spread, and with it what its divisor stands for. */
  public enum Distribution {
    /** Limits, nothing likelier than another; divisor the root of 3. */
    RECTANGULAR,
    /** A standard deviation of samples; divisor the root of their number. */
    NORMAL_MEAN,
    /** An expanded uncertainty; divisor its coverage factor 2. */
    NORMAL_EXPANDED
  }

  /**
   * One line.
   *
   * @param name of the source
   * @param from where the value comes from, in words
   * @param value in {@code unit}: limit, half step, standard deviation or expanded uncertainty
   * @param unit °C, µV or ppm
   * @param divisor makes a standard uncertainty of the value
   * @param sensitivity °C at the hot junction for one unit
   * @param standardC °C, value / divisor * sensitivity
   */
  public record Component(
      String name,
      String from,
      double value,
      String unit,
      Distribution distribution,
      double divisor,
      double sensitivity,
      double standardC) {}

  public Budget {
    components = List.copyOf(components);
    notes = List.copyOf(notes);
  }

  /**
   * The budget of a reading.
   *
   * @param readC °C of the hot junction before correction
   * @param coldJunctionC °C of the terminals
   * @param spreadC °C, standard deviation of the single looks that the reading was made of
   * @param samples how many those were, 1 or more
   * @throws OutOfRange when a temperature is outside the type's reference function
   */
  public static Budget of(
      MeasuringChain chain, double readC, double coldJunctionC, double spreadC, int samples) {
    Uncertainty.requireSamples(spreadC, samples);
    ThermocoupleType type = chain.type();
    double hotUvPerC = type.seebeckUvPerC(readC);
    double coldUvPerC = type.seebeckUvPerC(coldJunctionC);
    double emfMv = ColdJunction.emfMv(type, readC, coldJunctionC);
    List<Component> components = new ArrayList<>();
    double squares = 0;
    for (UncertaintySource source : UncertaintySource.values()) {
      double value = source.value(chain, readC, spreadC);
      double divisor = source.divisor(samples);
      double sensitivity = source.sensitivity(hotUvPerC, coldUvPerC, emfMv);
      double standardC = value / divisor * sensitivity;
      squares += standardC * standardC;
      components.add(
          new Component(
              source.title(),
              BudgetWords.from(source, chain, readC, samples),
              value,
              source.unit(),
              distribution(source),
              divisor,
              sensitivity,
              standardC));
    }
    double temperatureC = readC + chain.correction().addC(readC);
    return new Budget(
        temperatureC, components, Math.sqrt(squares), BudgetWords.notes(chain, readC));
  }

  /** k, by which the combined uncertainty is expanded. */
  public double coverage() {
    return Uncertainty.COVERAGE;
  }

  /** °C, k times the combined uncertainty: about 95 % where no single source rules. */
  public double expandedC() {
    return coverage() * combinedC;
  }

  /** For a reader: "1004 ± 8 °C". */
  public String text() {
    return Rounding.text(temperatureC, expandedC());
  }

  private static Distribution distribution(UncertaintySource source) {
    return switch (source) {
      case NOISE -> Distribution.NORMAL_MEAN;
      case CALIBRATION -> Distribution.NORMAL_EXPANDED;
      default -> Distribution.RECTANGULAR;
    };
  }
}
