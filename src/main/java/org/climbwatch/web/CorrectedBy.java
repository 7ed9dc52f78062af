package org.climbwatch.web;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;

/** Which calibration the temperatures of a record are to be told with. */
public enum CorrectedBy {
  /** As they were shown then. */
  RECORDED,
  /** As read, from the raw signal. */
  NONE,
  /** From the raw signal with the latest calibration of each probe's couple of then. */
  LATEST;

  /** For commands and addresses. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** That of a word; empty for one that is not known. */
  public static Optional<CorrectedBy> ofWord(String word) {
    return Arrays.stream(values()).filter(each -> each.word().equals(word)).findFirst();
  }

  /** All words, for messages. */
  public static String words() {
    return Arrays.stream(values()).map(CorrectedBy::word).collect(Collectors.joining(", "));
  }
}
