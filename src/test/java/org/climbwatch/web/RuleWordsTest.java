package org.climbwatch.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import org.climbwatch.alarm.RuleChange;
import org.climbwatch.alarm.RuleKind;
import org.climbwatch.alarm.Rules;
import org.junit.jupiter.api.Test;

/** The page has plain words for every setting of an alarm. */
class RuleWordsTest {
  @Test
  void everySettingHasWordsOfItsRuleOrOfAll() throws Exception {
    String words;
    try (InputStream in = getClass().getResourceAsStream("/web/rulewords.js")) {
      words = new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
    String plain = between(words, "const PLAIN = {", "};");
    String own = between(words, "const OWN = {", "\n};");

    for (RuleKind kind : Rules.ALL) {
      String ofRule =
          own.contains("\n  " + kind.alarm().word() + ": {")
              ? between(own, "\n  " + kind.alarm().word() + ": {", "}")
              : "";
      for (RuleKind.Number number : RuleChange.settable(kind)) {
        assertThat(ofRule + plain)
            .as("rulewords.js, %s.%s", kind.alarm().word(), number.key())
            .containsPattern("(^|[\\s{])" + number.key() + ": '");
      }
    }
  }

  private static String between(String text, String begin, String end) {
    int from = text.indexOf(begin) + begin.length();
    return text.substring(from, text.indexOf(end, from));
  }
}
