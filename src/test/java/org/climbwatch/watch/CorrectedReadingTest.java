package org.climbwatch.watch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalDouble;
import org.climbwatch.firing.Phase;
import org.climbwatch.reading.Fault;
import org.climbwatch.reading.Moment;
import org.climbwatch.reading.Reading;
import org.climbwatch.thermocouple.Budget;
import org.climbwatch.thermocouple.ColdJunction;
import org.climbwatch.thermocouple.Correction;
import org.climbwatch.thermocouple.MeasuringChain;
import org.climbwatch.thermocouple.ProbeErrors;
import org.climbwatch.thermocouple.ThermocoupleType;
import org.climbwatch.thermocouple.ToleranceClass;
import org.junit.jupiter.api.Test;

/** A calibration's correction on its way into what the watch shows. */
class CorrectedReadingTest {
  private static final ThermocoupleType K = ThermocoupleType.K;
  private static final Moment AT = new Moment(0, 0);
  private static final MeasuringChain BARE =
      new MeasuringChain(K, ToleranceClass.IEC_2, new ProbeErrors(4, 0, 0, 2, 0.25, 0, 0));
  private static final MeasuringChain CALIBRATED =
      BARE.with(new Correction(List.of(new Correction.Point(956, -6, 3.2))));

  @Test
  void correctionIsAddedAfterLinearisationAndWhatWasReadStays() {
    Reading reading = Reading.emf(AT, "upper", ColdJunction.emfMv(K, 956, 31), 31);

    Judged judged = judge(CALIBRATED, reading);

    assertThat(judged.temperatureC().orElseThrow()).isCloseTo(950, within(0.01));
    assertThat(judged.reading()).isEqualTo(reading);
  }

  @Test
  void instrumentsOwnTemperatureIsCorrectedAlike() {
    Reading reading = Reading.linearised(AT, "upper", 956, OptionalDouble.of(31));

    assertThat(judge(CALIBRATED, reading).temperatureC()).hasValue(950);
    assertThat(judge(BARE, reading).temperatureC()).hasValue(956);
  }

  @Test
  void uncertaintyIsThatOfTheBudget() {
    Reading reading = Reading.linearised(AT, "upper", 1004, OptionalDouble.of(31));

    assertThat(judge(CALIBRATED, reading).uncertaintyC())
        .hasValue(Budget.of(CALIBRATED, 1004, 31, 0, 1).expandedC());
    assertThat(judge(BARE, reading).uncertaintyC())
        .hasValue(Budget.of(BARE, 1004, 31, 0, 1).expandedC());
  }

  /** Also where the corrected temperature lies past the end of the couple's function. */
  @Test
  void lastTemperatureOfTheCoupleCanBeCorrected() {
    MeasuringChain upwards = BARE.with(new Correction(List.of(new Correction.Point(1300, 5, 3))));
    Reading last = Reading.linearised(AT, "upper", 1372, OptionalDouble.of(31));
    Reading beyond = Reading.linearised(AT, "upper", 1372.5, OptionalDouble.of(31));

    assertThat(judge(upwards, last).temperatureC()).hasValue(1377);
    assertThat(judge(upwards, beyond).fault()).hasValue(Fault.OUT_OF_RANGE);
  }

  private static Judged judge(MeasuringChain chain, Reading reading) {
    return new Judge(new ProbeSettings("upper", chain, true, OptionalDouble.empty()))
        .judge(reading, Phase.IDLE);
  }
}
