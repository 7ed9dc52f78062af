package org.climbwatch.reading;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Random;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.Size;

class LooksPropertiesTest {
  private static final Moment AT = new Moment(0, 1000);

  @Property
  void lessThanHalfWildLooksOfAnySizeCannotMoveTheMiddleOutOfTheOthers(
      @ForAll("sane") @Size(min = 2, max = 40) List<Double> sane,
      @ForAll("wild") List<Double> wild,
      @ForAll Random order) {
    List<Double> fewer = wild.subList(0, Math.min(wild.size(), sane.size() - 1));
    List<Reading> looks = looks(sane, fewer, order);

    Reading.Emf middle = (Reading.Emf) Looks.middle(AT, looks).orElseThrow();

    DoubleSummaryStatistics all = sane.stream().mapToDouble(value -> value).summaryStatistics();
    assertThat(middle.emfMv()).isBetween(all.getMin() - 5e-5, all.getMax() + 5e-5);
    assertThat(middle.spreadMv()).isBetween(0.0, 1.4826 * (all.getMax() - all.getMin()) + 1e-4);
    assertThat(middle.samples()).isEqualTo(looks.size());
  }

  @Property
  void theOrderOfGoodLooksDoesNotMatter(
      @ForAll("sane") @Size(min = 1, max = 30) List<Double> sane, @ForAll Random order) {
    List<Reading> looks = looks(sane, List.of(), new Random(0));
    List<Reading> others = new ArrayList<>(looks);
    Collections.shuffle(others, order);

    assertThat(Looks.middle(AT, others)).isEqualTo(Looks.middle(AT, looks));
  }

  @Property
  void aMinorityOfFaultsChangesNothing(
      @ForAll("sane") @Size(min = 1, max = 30) List<Double> sane,
      @ForAll("faults") List<Fault> faults,
      @ForAll Random order) {
    List<Reading> looks = looks(sane, List.of(), new Random(0));
    List<Reading> disturbed = new ArrayList<>(looks);
    faults.stream()
        .limit(sane.size() - 1)
        .forEach(fault -> disturbed.add(Reading.faulty(AT, "upper", fault)));
    Collections.shuffle(disturbed, order);

    assertThat(Looks.middle(AT, disturbed)).isEqualTo(Looks.middle(AT, looks));
  }

  @Property
  void aMajorityOfFaultsIsOneOfThemAndNeverATemperature(
      @ForAll("sane") @Size(max = 10) List<Double> sane, @ForAll("faults") List<Fault> faults) {
    List<Reading> looks = looks(sane, List.of(), new Random(0));
    for (int i = 0; i <= sane.size(); i++) {
      looks.add(Reading.faulty(AT, "upper", faults.get(i % faults.size())));
    }

    Reading reading = Looks.middle(AT, looks).orElseThrow();

    assertThat(reading).isInstanceOf(Reading.Faulty.class);
    assertThat(faults).contains(((Reading.Faulty) reading).fault());
  }

  @Provide
  Arbitrary<List<Double>> sane() {
    return Arbitraries.doubles().between(39, 41).list();
  }

  @Provide
  Arbitrary<List<Double>> wild() {
    return Arbitraries.doubles().between(-100_000, 100_000).list().ofMaxSize(40);
  }

  @Provide
  Arbitrary<List<Fault>> faults() {
    return Arbitraries.of(Fault.values()).list().ofMinSize(1).ofMaxSize(40);
  }

  private static List<Reading> looks(List<Double> sane, List<Double> wild, Random order) {
    List<Reading> looks = new ArrayList<>();
    sane.forEach(emfMv -> looks.add(Reading.emf(AT, "upper", emfMv, 25)));
    wild.forEach(emfMv -> looks.add(Reading.emf(AT, "upper", emfMv, 25)));
    Collections.shuffle(looks, order);
    return looks;
  }
}
