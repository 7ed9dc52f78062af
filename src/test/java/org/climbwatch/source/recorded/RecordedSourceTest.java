package org.climbwatch.source.recorded;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.OptionalDouble;
import org.climbwatch.reading.Fault;
import org.climbwatch.reading.Moment;
import org.climbwatch.reading.Reading;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RecordedSourceTest {
  private static final long ORIGIN = 5000;

  @TempDir Path folder;

  @Test
  void readingsComeWhenTheyAreDueCarryingTheMomentAsked() throws IOException {
    try (RecordedSource source = source("100,20,\n102,22,\n")) {
      assertThat(source.read(at(ORIGIN - 1))).isEmpty();
      assertThat(source.read(at(ORIGIN + 3))).contains(reading(ORIGIN + 3, 20));
      assertThat(source.read(at(ORIGIN + 1000))).isEmpty();
      assertThat(source.read(at(ORIGIN + 2000))).contains(reading(ORIGIN + 2000, 22));
    }
  }

  @Test
  void whoAsksSeldomGetsTheNewest() throws IOException {
    try (RecordedSource source = source("0,20,\n1,21,\n2,22,\n9,29,\n")) {
      assertThat(source.read(at(ORIGIN + 5000))).contains(reading(ORIGIN + 5000, 22));
    }
  }

  @Test
  void deedsArePassedOverAndAfterTheEndItIsSilent() throws IOException {
    try (RecordedSource source = source("0,,began\n1,21,\n2,,ended\n")) {
      assertThat(source.read(at(ORIGIN))).contains(reading(ORIGIN, 21));
      assertThat(source.read(at(ORIGIN + 1)))
          .contains(Reading.faulty(at(ORIGIN + 1), "upper", Fault.NO_ANSWER));
      assertThat(source.describe()).endsWith("firing.csv, over");
    }
  }

  @Test
  void aRowThatCannotBeUsedIsAFaultThatSaysWhyAndNoException() throws IOException {
    try (RecordedSource source = source("0,20,\n1,hot,\n2,22,\n")) {
      assertThat(source.read(at(ORIGIN))).contains(reading(ORIGIN, 20));
      assertThat(source.read(at(ORIGIN + 1000)))
          .contains(Reading.faulty(at(ORIGIN + 1000), "upper", Fault.GARBLED));
      assertThat(source.describe())
          .contains("firing.csv:3: temperature_c = \"hot\" is not a number");
    }
  }

  private RecordedSource source(String rows) throws IOException {
    Path file = folder.resolve("firing.csv");
    Files.writeString(file, "elapsed_s,temperature_c,action\n" + rows);
    return new RecordedSource("upper", file, ORIGIN);
  }

  private static Reading reading(long millis, double temperatureC) {
    return Reading.linearised(at(millis), "upper", temperatureC, OptionalDouble.empty());
  }

  private static Moment at(long millis) {
    return new Moment(0, millis);
  }
}
