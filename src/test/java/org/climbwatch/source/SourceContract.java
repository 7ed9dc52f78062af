package org.climbwatch.source;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import java.util.function.Predicate;
import org.assertj.core.data.Offset;
import org.climbwatch.reading.Fault;
import org.climbwatch.reading.Moment;
import org.climbwatch.reading.Reading;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What every source with a device behind it keeps to; run on each with a device of its kind. */
public abstract class SourceContract {
  protected static final String PROBE = "top";

  private static final int MOST_LOOKS = 3000;

  private Source source;
  private long millis = 1000;

  /** The thing on the other side, which the test commands. */
  public interface Device {
    /** From now on gives this signal at each look, or as often as it can. */
    void gives(double emfMv, double coldJunctionC);

    /** From now on reports an open thermocouple circuit. */
    void reportsOpenCircuit();

    /** Is there and says nothing. */
    void fallsSilent();

    void unplug();

    void replug();
  }

  /** The device; plugged in and silent at first. */
  protected abstract Device device();

  /** A source on that device, under the name {@link #PROBE}, not read from yet. */
  protected abstract Source open();

  /** Lets time go on, for real or not, until another look makes sense. */
  protected abstract void pass();

  @BeforeEach
  final void openSource() {
    source = open();
  }

  @AfterEach
  final void closeSource() {
    source.close();
  }

  @Test
  void noReadingIsGivenBeforeTheDeviceGaveOne() {
    device().fallsSilent();

    for (int look = 0; look < 3; look++) {
      assertThat(look().filter(SourceContract::isGood)).isEmpty();
      pass();
    }
  }

  @Test
  void aReadingCarriesProbeMomentAndTheSignalOnTheGridOfTheRecord() {
    device().gives(40.123, 25.5);

    Reading reading = awaitReading(SourceContract::isGood);

    assertThat(reading.probe()).isEqualTo(PROBE);
    assertThat(reading.at()).isEqualTo(new Moment(3, millis));
    assertSignal(reading, 40.123, 25.5);
  }

  /** That a reading is this signal, on the grid of the record; a device may tell less than that. */
  protected void assertSignal(Reading reading, double emfMv, double coldJunctionC) {
    Reading.Emf emf = (Reading.Emf) reading;
    assertThat(emf.emfMv()).isCloseTo(emfMv, within(0.006));
    assertThat(emf.coldJunctionC()).isEqualTo(coldJunctionC);
    assertThat(Reading.emf(emf.at(), PROBE, emf.emfMv(), emf.coldJunctionC())).isEqualTo(emf);
  }

  @Test
  void aFaultThatTheDeviceReportsTravelsAndTheNextReadingIsGoodAgain() {
    device().reportsOpenCircuit();
    awaitFault(Fault.OPEN_CIRCUIT);

    device().gives(10, 20);

    awaitReading(SourceContract::isGood);
  }

  @Test
  void aSilentDeviceIsAFaultAndNeverItsLastReading() {
    device().gives(40, 25);
    awaitReading(SourceContract::isGood);

    device().fallsSilent();

    awaitFault(Fault.NO_ANSWER);
    pass();
    assertThat(look()).isPresent().get().isInstanceOf(Reading.Faulty.class);
  }

  @Test
  void aDeviceThatIsPulledOutIsGoneAndFoundAgainByItself() {
    device().gives(40, 25);
    awaitReading(SourceContract::isGood);

    device().unplug();
    awaitFault(Fault.DEVICE_GONE);
    assertThat(source.describe()).contains("gone");
    device().replug();

    awaitReading(SourceContract::isGood);
    assertThat(source.describe()).doesNotContain("gone");
  }

  @Test
  void describesItselfAtEveryTimeInOneLine() {
    assertThat(source.describe()).isNotBlank().doesNotContain("\n");
    device().gives(40, 25);
    awaitReading(SourceContract::isGood);
    assertThat(source.describe()).isNotBlank().doesNotContain("\n");
    device().unplug();
    awaitFault(Fault.DEVICE_GONE);
    assertThat(source.describe()).isNotBlank().doesNotContain("\n");
  }

  /** The closing itself is done after each test, so also in the states that the others leave. */
  @Test
  void closesWithoutEverHavingBeenRead() {
    assertThat(source).isNotNull();
  }

  private Optional<Reading> look() {
    millis += 1000;
    return source.read(new Moment(3, millis));
  }

  private void awaitFault(Fault fault) {
    awaitReading(reading -> reading instanceof Reading.Faulty faulty && faulty.fault() == fault);
  }

  private Reading awaitReading(Predicate<Reading> wanted) {
    Optional<Reading> last = Optional.empty();
    for (int look = 0; look < MOST_LOOKS; look++) {
      Optional<Reading> reading = look();
      if (reading.filter(wanted).isPresent()) {
        return reading.get();
      }
      last = reading.isPresent() ? reading : last;
      pass();
    }
    throw new AssertionError("never came; last was " + last + "; " + source.describe());
  }

  private static boolean isGood(Reading reading) {
    return !(reading instanceof Reading.Faulty);
  }

  private static Offset<Double> within(double emfMv) {
    return Offset.offset(emfMv);
  }
}
