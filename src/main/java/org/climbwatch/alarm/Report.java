package org.climbwatch.alarm;

/**
 * Something that the program found out about its machine and that no reading shows. Each replaces
 * what was reported of the same matter before.
 */
public sealed interface Report {
  /** In place of a trouble or a doubt when there is none. */
  String WELL = "well";

  /** The lower-case word of the record for what it is about. */
  String matter();

  /** One text from which {@link #of} makes an equal value. */
  String text();

  /**
   * Whether the record reaches the disk.
   *
   * @param trouble why it does not, on one line; blank when it does
   */
  record Writing(String trouble) implements Report {
    public Writing {
      trouble = oneLine(trouble);
    }

    @Override
    public String matter() {
      return "writing";
    }

    @Override
    public String text() {
      return orWell(trouble);
    }
  }

  /**
   * Room on the disk of the record.
   *
   * @param megabytes 10⁶ bytes that this program may still write there, 0 or more
   */
  record FreeSpace(long megabytes) implements Report {
    public FreeSpace {
      if (megabytes < 0) {
        throw new IllegalArgumentException("free space must be 0 MB or more, was " + megabytes);
      }
    }

    @Override
    public String matter() {
      return "free_space";
    }

    @Override
    public String text() {
      return megabytes + " MB";
    }
  }

  /**
   * Whether the wall clock can be right.
   *
   * @param doubt why it cannot be trusted, on one line; blank while nothing speaks against it
   */
  record Clock(String doubt) implements Report {
    public Clock {
      doubt = oneLine(doubt);
    }

    @Override
    public String matter() {
      return "clock";
    }

    @Override
    public String text() {
      return orWell(doubt);
    }
  }

  /**
   * The wall clock has jumped against the machine's monotonic time.
   *
   * @param seconds forward, or back where negative
   */
  record ClockJump(long seconds) implements Report {
    @Override
    public String matter() {
      return "clock_jump";
    }

    @Override
    public String text() {
      return seconds + " s";
    }
  }

  /**
   * Back again.
   *
   * @throws IllegalArgumentException when matter or text are none that a report gives
   */
  static Report of(String matter, String text) {
    return switch (matter) {
      case "writing" -> new Writing(orNone(text));
      case "free_space" -> new FreeSpace(number(text, " MB"));
      case "clock" -> new Clock(orNone(text));
      case "clock_jump" -> new ClockJump(number(text, " s"));
      default ->
          throw new IllegalArgumentException(
              "\""
                  + matter
                  + "\" cannot be reported; allowed: writing, free_space, clock, clock_jump");
    };
  }

  private static String oneLine(String text) {
    String line = text.replaceAll("\\s+", " ").strip();
    return line.equals(WELL) ? "" : line;
  }

  private static String orWell(String text) {
    return text.isEmpty() ? WELL : text;
  }

  private static String orNone(String text) {
    return text.equals(WELL) ? "" : text;
  }

  private static long number(String text, String unit) {
    if (!text.matches("-?\\d{1,15}" + unit)) {
      throw new IllegalArgumentException(
          "\"" + text + "\" is not a whole number followed by \"" + unit + "\"");
    }
    return Long.parseLong(text.substring(0, text.length() - unit.length()));
  }
}
