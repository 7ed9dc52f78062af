package org.climbwatch.alarm;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.LongRange;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SignatureTest {
  @Property(tries = 200)
  void textBringsBackWhoAndNote(@ForAll String who, @ForAll String note) {
    Signature signature = new Signature(who, note);

    assertThat(Signature.ofText(signature.text())).isEqualTo(signature);
  }

  @Property(tries = 200)
  void textBringsBackHowLongItIsShelved(
      @ForAll @LongRange(min = 60, max = 28_800) long seconds,
      @ForAll String who,
      @ForAll String note) {
    Shelving shelving = new Shelving(Duration.ofSeconds(seconds), new Signature(who, note));

    assertThat(Shelving.ofText(shelving.text())).isEqualTo(shelving);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"", "Ann", "s: Ann", "1800 s Ann", "59 s: ", "28801 s: ", "-60 s: ", "x s: "})
  void textWithoutAnAllowedTimeIsRefused(String text) {
    assertThatThrownBy(() -> Shelving.ofText(text)).isInstanceOf(IllegalArgumentException.class);
  }

  @ParameterizedTest
  @ValueSource(longs = {0, 59_999, 60_500, 28_801_000})
  void shelvingIsNeverTooShortTooLongOrForEver(long millis) {
    assertThatThrownBy(() -> new Shelving(Duration.ofMillis(millis), Signature.NOBODY))
        .hasMessageContaining("60 to 28800");
  }
}
