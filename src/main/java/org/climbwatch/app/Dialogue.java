package org.climbwatch.app;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.PrintWriter;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;

/** Questions and answers, a line each. A wrong answer is told and asked again. */
final class Dialogue {
  private final BufferedReader in;
  private final PrintWriter out;

  Dialogue(BufferedReader in, PrintWriter out) {
    this.in = in;
    this.out = out;
  }

  void say(String text) {
    out.println(text);
    out.flush();
  }

  /**
   * Asks until the answer can be used.
   *
   * @param make throws IllegalArgumentException, which says what is wrong, for what cannot
   * @throws Refusal when there is no further input
   */
  <T> T ask(String question, Function<String, T> make) throws IOException {
    while (true) {
      out.print(question + " ");
      out.flush();
      String line = in.readLine();
      if (line == null) {
        out.println();
        throw new Refusal("the answers ended before the end; nothing was written");
      }
      try {
        return make.apply(line.strip());
      } catch (IllegalArgumentException wrong) {
        say("  " + wrong.getMessage());
      }
    }
  }

  /** One of some words, or the beginning of one. */
  String choice(String question, List<String> words) throws IOException {
    return ask(
        question + " [" + String.join(", ", words) + "]",
        answer -> {
          String given = answer.toLowerCase(Locale.ROOT);
          List<String> fitting =
              words.stream()
                  .filter(
                      word -> !given.isEmpty() && word.toLowerCase(Locale.ROOT).startsWith(given))
                  .toList();
          return words.stream()
              .filter(answer::equals)
              .findFirst()
              .orElseGet(
                  () -> {
                    if (fitting.size() != 1) {
                      throw new IllegalArgumentException(
                          "\"" + answer + "\" is none of them; write " + String.join(", ", words));
                    }
                    return fitting.get(0);
                  });
        });
  }

  boolean yes(String question) throws IOException {
    return choice(question, List.of("yes", "no")).equals("yes");
  }

  /** A text that is not blank, 100 characters at the most. */
  String text(String question) throws IOException {
    return ask(
        question,
        answer -> {
          if (answer.isBlank() || answer.length() > 100) {
            throw new IllegalArgumentException("write 1 to 100 characters");
          }
          return answer;
        });
  }

  double number(String question, double least, double most) throws IOException {
    return ask(
        question,
        answer -> {
          double number = parsed(answer);
          if (!(number >= least && number <= most)) {
            throw new IllegalArgumentException(
                answer + " is out of range: " + least + " to " + most);
          }
          return number;
        });
  }

  /** With a point or a comma. */
  static double parsed(String text) {
    try {
      return Double.parseDouble(text.replace(',', '.'));
    } catch (NumberFormatException noNumber) {
      throw new IllegalArgumentException("\"" + text + "\" is no number", noNumber);
    }
  }
}
