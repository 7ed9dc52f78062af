package org.climbwatch.app.config;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.stream.Collectors;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.climbwatch.alarm.AlarmKind;
import org.climbwatch.alarm.AlarmSettings;
import org.climbwatch.alarm.Delays;
import org.climbwatch.alarm.RuleKind;
import org.climbwatch.alarm.RuleSettings;
import org.climbwatch.alarm.Rules;
import org.climbwatch.firing.FiringSettings;
import org.climbwatch.firing.Plan;
import org.climbwatch.signal.SignalSettings;
import org.climbwatch.thermocouple.Correction;
import org.climbwatch.thermocouple.MeasuringChain;
import org.climbwatch.thermocouple.ProbeErrors;
import org.climbwatch.thermocouple.ThermocoupleType;
import org.climbwatch.thermocouple.ToleranceClass;
import org.climbwatch.watch.ProbeSettings;
import org.climbwatch.watch.WatchSettings;
import org.junit.jupiter.api.Test;

class SettingsTextTest {
  private static final WatchSettings SAMPLE = Configuration.load(SampleFile.PATH).watch();
  private static final String TEXT = SettingsText.encode(SAMPLE);

  @Property(tries = 200)
  void settingsComeBackAsTheyWere(@ForAll("settings") WatchSettings settings) {
    assertThat(SettingsText.decode(SettingsText.encode(settings))).isEqualTo(settings);
  }

  @Property(tries = 200)
  void sameSettingsGiveTheSameTextInWhateverOrderItIsRead(@ForAll("settings") WatchSettings any) {
    List<String> lines = Arrays.asList(SettingsText.encode(any).split("\n"));
    Collections.reverse(lines);

    WatchSettings back = SettingsText.decode(String.join("\n", lines));

    assertThat(SettingsText.encode(back)).isEqualTo(SettingsText.encode(any));
  }

  @Test
  void filesThatAreShippedComeBackAsTheyWere() {
    for (Path file : List.of(SampleFile.PATH, Path.of("config/demo.toml"))) {
      WatchSettings settings = Configuration.load(file).watch();

      assertThat(SettingsText.decode(SettingsText.encode(settings))).isEqualTo(settings);
    }
  }

  /** A record of an older version lacks what came later. */
  @Test
  void settingThatIsMissingHasItsDefault() {
    String older = without("climb_stalled.least_climb_c_per_h", "firing.end_below_c");

    WatchSettings settings = SettingsText.decode(older);

    assertThat(settings.alarm().of(AlarmKind.CLIMB_STALLED))
        .isEqualTo(AlarmSettings.DEFAULT.of(AlarmKind.CLIMB_STALLED));
    assertThat(settings.firing()).isEqualTo(FiringSettings.DEFAULT);
  }

  /** Steps and drift were not counted then, and a replay must find the same uncertainty. */
  @Test
  void whatAnOlderRecordDidNotCountIsNotCounted() {
    String older =
        without("probe.step_c", "probe.step_uv", "probe.offset_error_uv", "probe.gain_error_ppm");

    ProbeErrors sample = SAMPLE.probe().chain().errors();
    assertThat(SettingsText.decode(older).probe().chain().errors())
        .isEqualTo(ProbeErrors.inDegrees(sample.amplifierC(), sample.coldJunctionC()));
  }

  @Test
  void correctionThatCannotBeReadIsRefused() {
    refused(TEXT + "probe.correction=100:1\n", "probe.correction = \"100:1\" is no correction");
    refused(TEXT + "probe.correction=100:1:x\n", "is no correction");
    refused(TEXT + "probe.correction=100:1:1 50:0:1\n", "is no correction");
  }

  @Test
  void unknownSettingIsRefused() {
    refused(TEXT + "alarm_of_a_later_version.limit=5\n", "alarm_of_a_later_version.limit");
  }

  @Test
  void settingThatStandsTwiceIsRefused() {
    refused(TEXT + "kiln=another\n", "\"kiln\" stands twice");
  }

  @Test
  void valueOfTheWrongKindIsRefused() {
    refused(with("climb.window_s", "long"), "climb.window_s = \"long\" is no number");
    refused(with("falling.enabled", "yes"), "falling.enabled = \"yes\" is no true or false");
    refused(with("falling.on_delay_ms", "1.5"), "falling.on_delay_ms = \"1.5\" is no number of ms");
    refused(with("probe.type", "Q"), "probe.type = \"Q\" is no known word");
    refused(with("probe.tolerance", "iec_9"), "probe.tolerance = \"iec_9\" is no known word");
    refused(with("kiln", "a\\b"), "kiln = \"a\\b\" is no text");
  }

  @Test
  void impossibleValueIsRefused() {
    refused(with("climb.window_s", "NaN"), "climbWindowSeconds must be 30.0 to 1800.0, was NaN");
  }

  @Test
  void tornTextIsRefused() {
    refused("", "has no '='");
    refused(TEXT + "falling.ena", "has no '='");
  }

  private static void refused(String text, String why) {
    assertThatThrownBy(() -> SettingsText.decode(text))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining(why);
  }

  private static String with(String key, String value) {
    return without(key) + key + "=" + value + "\n";
  }

  private static String without(String... keys) {
    String text = TEXT;
    for (String key : keys) {
      assertThat(text).contains(key + "=");
      text =
          text.lines()
              .filter(line -> !line.startsWith(key + "="))
              .collect(Collectors.joining("\n", "", "\n"));
    }
    return text;
  }

  @Provide
  Arbitrary<WatchSettings> settings() {
    return Combinators.combine(
            Arbitraries.strings().ofMaxLength(12),
            number(50, 1400).injectNull(0.3),
            probe().list().ofMinSize(1).ofMaxSize(4).uniqueElements(ProbeSettings::name),
            Combinators.combine(number(30, 1800), number(10, 300), number(2, 200))
                .as(SignalSettings::new),
            firing(),
            alarms())
        .as(
            (kiln, target, probes, signal, firing, alarms) ->
                new WatchSettings(
                    kiln,
                    target == null ? OptionalDouble.empty() : OptionalDouble.of(target),
                    probes,
                    signal,
                    firing,
                    alarms));
  }

  private static Arbitrary<ProbeSettings> probe() {
    Arbitrary<MeasuringChain> chain =
        Combinators.combine(
                Arbitraries.of(ThermocoupleType.class),
                Arbitraries.of(ToleranceClass.class),
                errors(),
                correction())
            .as(MeasuringChain::new);
    return Combinators.combine(
            Arbitraries.strings().withChars("ab=\\\n\r #ü").ofMaxLength(8),
            chain,
            flag(),
            optional(number(50, 1800)))
        .as(ProbeSettings::new);
  }

  private static Arbitrary<ProbeErrors> errors() {
    return Combinators.combine(
            number(0, 50),
            number(0, 1000),
            number(0, 50_000),
            number(0, 50),
            number(0, 10),
            number(0, 200),
            number(0, 50))
        .as(ProbeErrors::new);
  }

  /** Points 100 °C apart, so that corrections of up to 40 °C cannot turn them around. */
  private static Arbitrary<Correction> correction() {
    return Combinators.combine(number(-40, 40), number(0, 20))
        .as(List::of)
        .list()
        .ofMaxSize(8)
        .map(
            pairs -> {
              List<Correction.Point> points = new ArrayList<>();
              for (List<Double> pair : pairs) {
                points.add(new Correction.Point(100.0 * points.size(), pair.get(0), pair.get(1)));
              }
              return new Correction(points);
            });
  }

  private static Arbitrary<FiringSettings> firing() {
    return Combinators.combine(
            flag(),
            number(5, 200),
            number(0, 300),
            number(20, 500),
            number(60, 14_400),
            number(20, 300),
            optional(number(1, 2880)),
            Combinators.combine(number(1, 5000), number(20, 1400), number(0, 2880))
                .as(Plan.Segment::new)
                .list()
                .ofMaxSize(12)
                .map(Plan::new))
        .as(FiringSettings::new);
  }

  private static Arbitrary<OptionalDouble> optional(Arbitrary<Double> number) {
    return number
        .map(OptionalDouble::of)
        .optional()
        .map(value -> value.orElse(OptionalDouble.empty()));
  }

  private static Arbitrary<AlarmSettings> alarms() {
    List<Arbitrary<RuleSettings>> rules = new ArrayList<>();
    for (RuleKind kind : Rules.ALL) {
      List<Arbitrary<Double>> numbers = new ArrayList<>();
      kind.numbers().forEach(each -> numbers.add(number(each.low(), each.high())));
      rules.add(
          Combinators.combine(flag(), Combinators.combine(numbers).as(values -> values), delays())
              .as(
                  (enabled, values, delays) ->
                      kind.settings(enabled, named(kind, values), delays)));
    }
    return Combinators.combine(rules).as(AlarmSettings::new);
  }

  private static Map<String, Double> named(RuleKind kind, List<Double> values) {
    Map<String, Double> named = new TreeMap<>();
    for (int i = 0; i < values.size(); i++) {
      named.put(kind.numbers().get(i).key(), values.get(i));
    }
    return named;
  }

  private static Arbitrary<Delays> delays() {
    Arbitrary<Long> millis = Arbitraries.longs().between(0, Delays.LONGEST.toMillis());
    return Combinators.combine(millis, millis)
        .as((on, off) -> new Delays(Duration.ofMillis(on), Duration.ofMillis(off)));
  }

  private static Arbitrary<Double> number(double low, double high) {
    return Arbitraries.doubles().between(low, high).ofScale(9);
  }

  private static Arbitrary<Boolean> flag() {
    return Arbitraries.of(true, false);
  }
}
