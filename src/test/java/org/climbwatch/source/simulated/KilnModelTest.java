package org.climbwatch.source.simulated;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/**
 * Physics by first principles (heat balance, second law); rates by shared facts: "light fibre kiln
 * over 1000 °C/h up, over 500 °C/h down" and "200-400 at first" shut and loaded (common practice);
 * gas shut off in NIST's gas-burner room fires: 1037 °C fell 76 °C in 15 s, 255 in 60 s, a kiln
 * full of pots slower.
 */
class KilnModelTest {
  private static final double FULL_KW = Kiln.TOP_HAT.burnerKw();

  @Test
  void whatComesInIsStoredOrLostAndNothingElse() {
    KilnModel model = new KilnModel(Kiln.TOP_HAT, 14);
    double storedBefore = model.storedBesideWareKj();
    double kept = 0;
    double lost = 0;

    for (int s = 0; s < 4 * 3600; s++) {
      double flameKw = s < 3 * 3600 ? 15 : 0;
      kept += model.keptKw(flameKw);
      model.step(flameKw, Draught.SHUT);
      lost += model.lostKw();
    }

    double stored = model.storedBesideWareKj() - storedBefore + wareKj(model, 14, model.wareC());
    assertThat(stored + lost).isCloseTo(kept, within(0.005 * kept));
  }

  @Test
  void theChamberNeverKeepsMoreThanTheFlameGives() {
    KilnModel model = new KilnModel(Kiln.TOP_HAT, 14);

    for (int s = 0; s < 12 * 3600; s++) {
      assertThat(model.keptKw(FULL_KW)).isBetween(0.0, FULL_KW);
      model.step(FULL_KW, Draught.OPEN);
    }
  }

  @Test
  void aSteadyFlameEndsWhereLossesEqualGain() {
    KilnModel model = new KilnModel(Kiln.TOP_HAT, 14);
    for (int s = 0; s < 60 * 3600; s++) {
      model.step(12, Draught.OPEN);
    }
    double settledC = model.chamberC();

    model.step(12, Draught.OPEN);

    assertThat(model.lostKw()).isCloseTo(model.keptKw(12), within(0.001));
    assertThat(model.chamberC()).isCloseTo(settledC, within(1e-4));
    assertThat(settledC).isBetween(800.0, 1200.0);
  }

  @Test
  void withoutAFlameItFallsAllTheWayAndNeverBelowTheOutside() {
    for (Draught draught : Draught.values()) {
      KilnModel model = new KilnModel(Kiln.TOP_HAT, 1250);
      double before = model.chamberC();

      for (int s = 0; s < 40 * 3600; s++) {
        model.step(0, draught);
        assertThat(model.chamberC()).isLessThanOrEqualTo(before);
        before = model.chamberC();
      }

      assertThat(before).isBetween(Kiln.TOP_HAT.outsideC(), 200.0);
    }
  }

  @Test
  void moreDraughtCoolsFaster() {
    assertThat(fallIn(3600, heatedTo(1000, Kiln.TOP_HAT), Draught.LID_LIFTED))
        .isGreaterThan(fallIn(3600, heatedTo(1000, Kiln.TOP_HAT), Draught.OPEN) + 100);
    assertThat(fallIn(3600, heatedTo(1000, Kiln.TOP_HAT), Draught.OPEN))
        .isGreaterThan(fallIn(3600, heatedTo(1000, Kiln.TOP_HAT), Draught.SHUT) + 50);
  }

  @Test
  void aLoadedKilnShutAtTopTemperatureLosesAFewHundredDegreesInTheFirstHour() {
    assertThat(fallIn(3600, heatedTo(1260, Kiln.TOP_HAT), Draught.SHUT)).isBetween(200.0, 500.0);
  }

  @Test
  void aLostFlameShowsInSecondsButFallsSlowerThanBareGas() {
    double loadedFall15 = fallIn(15, heatedTo(1000, Kiln.TOP_HAT), Draught.OPEN);
    double loadedFall60 = fallIn(60, heatedTo(1000, Kiln.TOP_HAT), Draught.OPEN);
    double lightFall60 = fallIn(60, heatedTo(1000, Kiln.TOP_HAT_LIGHT), Draught.OPEN);

    assertThat(loadedFall15).isBetween(4.0, 76.0);
    assertThat(loadedFall60).isBetween(10.0, 255.0);
    assertThat(lightFall60).isBetween(loadedFall60, 255.0);
  }

  @Test
  void fullGasLiftsALightKilnByMoreThanAThousandDegreesAnHour() {
    KilnModel model = new KilnModel(Kiln.TOP_HAT_LIGHT, 300);

    for (int s = 0; s < 1200; s++) {
      model.step(FULL_KW, Draught.OPEN);
    }

    assertThat((model.chamberC() - 300) * 3).isBetween(1000.0, 3000.0);
  }

  @Test
  void dryingAndBoundWaterTakeHeat() {
    KilnModel model = new KilnModel(Kiln.TOP_HAT, 14);

    assertThat(model.wareKjPerK(98)).isGreaterThan(1.5 * model.wareKjPerK(250));
    assertThat(model.wareKjPerK(500)).isGreaterThan(1.1 * model.wareKjPerK(900));
    double waterKj = wareKj(model, 20, 180) - Kiln.TOP_HAT.wareKg() * 160;
    assertThat(waterKj).isCloseTo(Kiln.TOP_HAT.waterKg() * 2257, within(10.0));
  }

  /** The probe must follow as quickly as in the facts' table: 36 s at 400 °C, 14, 7 and 4. */
  @Test
  void theProbeLagsLessTheHotterItIs() {
    assertThat(SimulatedProbe.lagSeconds(400)).isCloseTo(36, within(1.0));
    assertThat(SimulatedProbe.lagSeconds(700)).isCloseTo(14, within(1.0));
    assertThat(SimulatedProbe.lagSeconds(1000)).isCloseTo(7, within(0.5));
    assertThat(SimulatedProbe.lagSeconds(1250)).isCloseTo(4, within(0.5));
  }

  private static double wareKj(KilnModel model, double fromC, double toC) {
    double sum = 0;
    double stepC = 0.01;
    for (double at = fromC + stepC / 2; at < toC; at += stepC) {
      sum += model.wareKjPerK(at) * stepC;
    }
    return sum;
  }

  private static KilnModel heatedTo(double celsius, Kiln kiln) {
    KilnModel model = new KilnModel(kiln, 14);
    while (model.chamberC() < celsius) {
      model.step(0.8 * kiln.burnerKw(), Draught.OPEN);
    }
    return model;
  }

  private static double fallIn(int seconds, KilnModel model, Draught draught) {
    double from = model.chamberC();
    for (int s = 0; s < seconds; s++) {
      model.step(0, draught);
    }
    return from - model.chamberC();
  }
}
