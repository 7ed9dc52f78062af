package org.climbwatch.packaged;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;

/** The record that a daemon left behind, by its public export and its page's list of events. */
record TwinRun(TreeMap<Instant, CSVRecord> readings, List<JsonNode> events) {
  /** Of a daemon that still runs; it stops hereby. */
  static TwinRun takenFrom(DaemonProcess daemon, Path folder, Path data, long firing)
      throws IOException, InterruptedException {
    List<JsonNode> events = new ArrayList<>();
    daemon.get("api/v1/firings/" + firing + "/events").get("events").forEach(events::add);
    assertThat(daemon.stop()).isZero();
    DaemonProcess.Finished export =
        DaemonProcess.command(folder, "export", "latest", "--data", data.toString());
    assertThat(export.exit()).as(export.err()).isZero();
    TreeMap<Instant, CSVRecord> readings = new TreeMap<>();
    CSVFormat format = CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).get();
    for (CSVRecord row : format.parse(new StringReader(export.out()))) {
      if (row.get("action").isEmpty()) {
        readings.put(Instant.parse(row.get("time")), row);
      }
    }
    return new TwinRun(readings, events);
  }

  /** Whether no reading is missing in the time before a moment. */
  boolean unbroken(Instant until, Duration length, Duration interval) {
    Instant expected = until.minus(length);
    for (Instant at : readings.subMap(expected, true, until, true).keySet()) {
      if (Duration.between(expected, at).compareTo(interval) > 0) {
        return false;
      }
      expected = at;
    }
    return Duration.between(expected, until).compareTo(interval) <= 0;
  }
}
