package org.climbwatch.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.StringReader;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.csv.CSVFormat;
import org.climbwatch.alarm.AlarmKind;
import org.climbwatch.alarm.AlarmState;
import org.climbwatch.firing.Phase;
import org.climbwatch.reading.Fault;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Every address of the contract answers with what the contract says. */
class RoutesTest {
  private Served served;
  private FakeBackend backend;

  @BeforeEach
  void start() throws Exception {
    served = new Served();
    backend = served.backend;
  }

  @AfterEach
  void stop() {
    served.close();
  }

  @Test
  void statusHasEveryFieldOfTheContract() throws Exception {
    long id = backend.begin("Tea bowls");
    backend.elapse(90_500);
    backend.measure(843.25, 118.4);
    backend.raise("a-1", AlarmKind.CLIMB_STALLED, "Seen. Means. Check.");

    HttpResponse<String> response = served.get("/api/v1/status");

    assertThat(response.statusCode()).isEqualTo(200);
    assertThat(response.headers().firstValue("Content-Type")).contains("application/json");
    JsonNode status = Served.json(response);
    assertThat(status.get("time").asText()).isEqualTo("2026-11-21T07:13:30.500Z");
    assertThat(status.get("kiln").asText()).isEqualTo("Meadow Lane top-hat");
    assertThat(status.get("phase").asText()).isEqualTo("drying");
    assertThat(status.get("forecast").get("level_c").isNull()).isTrue();
    assertThat(status.get("forecast").get("reason").asText()).isEqualTo("not_climbing");
    JsonNode firing = status.get("firing");
    assertThat(firing.get("id").asLong()).isEqualTo(id);
    assertThat(firing.get("name").asText()).isEqualTo("Tea bowls");
    assertThat(firing.get("elapsed_s").asDouble()).isEqualTo(90.5);
    JsonNode probe = status.get("probes").get(0);
    assertThat(probe.get("name").asText()).isEqualTo("top");
    assertThat(probe.get("temperature_c").asDouble()).isEqualTo(843.25);
    assertThat(probe.get("uncertainty_c").asDouble()).isEqualTo(5.37);
    assertThat(probe.get("climb_c_per_h").asDouble()).isEqualTo(118.4);
    assertThat(probe.get("climb_uncertainty_c_per_h").asDouble()).isEqualTo(6.4);
    assertThat(probe.get("emf_mv").asDouble()).isEqualTo(34.5732);
    assertThat(probe.get("cold_junction_c").asDouble()).isEqualTo(24.5);
    assertThat(probe.get("samples").asInt()).isEqualTo(9);
    assertThat(probe.get("spread_c").asDouble()).isEqualTo(0.25);
    assertThat(probe.get("quality").asText()).isEqualTo("good");
    assertThat(probe.get("age_s").asDouble()).isEqualTo(0.2);
    JsonNode alarm = status.get("alarms").get(0);
    assertThat(alarm.get("id").asText()).isEqualTo("a-1");
    assertThat(alarm.get("kind").asText()).isEqualTo("climb_stalled");
    assertThat(alarm.get("priority").asText()).isEqualTo("medium");
    assertThat(alarm.get("state").asText()).isEqualTo("unacknowledged");
    assertThat(alarm.get("since").asText()).isEqualTo("2026-11-21T07:13:30.500Z");
    assertThat(alarm.get("message").asText()).isEqualTo("Seen. Means. Check.");
  }

  @Test
  void probesTellWhatTheyHaveBeenThrough() throws Exception {
    JsonNode probe = Served.json(served.get("/api/v1/probes")).get("probes").get(0);

    assertThat(probe.get("drift").asText()).contains("40 °C lower beside");

    assertThat(probe.get("name").asText()).isEqualTo("top");
    assertThat(probe.get("type").asText()).isEqualTo("K");
    assertThat(probe.get("fitted").asText()).isEqualTo("2026-10-01");
    assertThat(probe.get("firings").asInt()).isEqualTo(52);
    assertThat(probe.get("high_firings").asInt()).isEqualTo(51);
    assertThat(probe.get("hours_over_800_c").asDouble()).isEqualTo(208.25);
    assertThat(probe.get("hours_over_1200_c").asDouble()).isEqualTo(20.75);
    assertThat(probe.get("replace").asText()).isEqualTo("soon");
    assertThat(probe.get("advice").asText()).isNotBlank();
  }

  @Test
  void uncertaintyOfAProbeIsItemised() throws Exception {
    backend.check(java.time.Instant.parse("2026-11-20T09:00:00Z"));
    backend.measure(1000, 118.4);

    JsonNode answer = Served.json(served.get("/api/v1/probes/top/uncertainty"));

    assertThat(answer.get("probe").asText()).isEqualTo("top");
    assertThat(answer.get("checked").asText()).isEqualTo("2026-11-20T09:00:00.000Z");
    JsonNode budget = answer.get("budget");
    assertThat(budget.get("text").asText()).startsWith("1000 ± ");
    double squares = 0;
    for (JsonNode each : budget.get("components")) {
      double standardC = each.get("standard_c").asDouble();
      assertThat(standardC)
          .isCloseTo(
              each.get("value").asDouble()
                  / each.get("divisor").asDouble()
                  * each.get("sensitivity").asDouble(),
              within(0.001));
      squares += standardC * standardC;
    }
    // GUM 5.1.2 and 6.2.1: root of the sum of squares, times k
    assertThat(budget.get("combined_c").asDouble()).isCloseTo(Math.sqrt(squares), within(0.001));
    assertThat(budget.get("expanded_c").asDouble())
        .isCloseTo(2 * Math.sqrt(squares), within(0.002));
  }

  @Test
  void withoutATemperatureThereIsNoBudgetAndWithoutACheckNoDate() throws Exception {
    backend.fail(Fault.OPEN_CIRCUIT);

    JsonNode answer = Served.json(served.get("/api/v1/probes/top/uncertainty"));

    assertThat(answer.get("budget").isNull()).isTrue();
    assertThat(answer.get("checked").isNull()).isTrue();
    assertThat(Served.json(served.get("/api/v1/status")).at("/probes/0/checked").isNull()).isTrue();
    assertThat(served.get("/api/v1/probes/nowhere/uncertainty").statusCode()).isEqualTo(404);
  }

  @Test
  void anExportWithAnotherCalibrationSaysSoInItsName() throws Exception {
    long id = backend.begin("Tea bowls");
    String address = "/api/v1/firings/" + id + "/export.csv?calibration=";

    assertThat(served.get(address + "none").headers().firstValue("Content-Disposition"))
        .hasValueSatisfying(name -> assertThat(name).contains("-calibration-none.csv"));
    HttpResponse<String> wrong = served.get(address + "best");
    assertThat(wrong.statusCode()).isEqualTo(400);
    assertThat(wrong.body()).contains("recorded, none, latest");
  }

  @Test
  void idleStatusHasNoFiringAndNoInventedNumber() throws Exception {
    JsonNode status = Served.json(served.get("/api/v1/status"));

    assertThat(status.get("firing").isNull()).isTrue();
    assertThat(status.get("phase").asText()).isEqualTo("idle");
    assertThat(status.get("probes").get(0).get("temperature_c").isNull()).isTrue();
    assertThat(status.get("probes").get(0).get("quality").asText()).isEqualTo("no_answer");
    assertThat(status.get("alarms")).isEmpty();
  }

  @Test
  void faultyReadingShowsItsFaultAndNoTemperature() throws Exception {
    backend.fail(Fault.SHORT_TO_GROUND);

    JsonNode probe = Served.json(served.get("/api/v1/status")).get("probes").get(0);

    assertThat(probe.get("temperature_c").isNull()).isTrue();
    assertThat(probe.get("climb_c_per_h").isNull()).isTrue();
    assertThat(probe.get("quality").asText()).isEqualTo("short_to_ground");
    assertThat(probe.get("quality_text").asText()).isEqualTo(Fault.SHORT_TO_GROUND.plainly());
  }

  @Test
  void staleReadingIsNeverShownAsTheTemperatureNow() throws Exception {
    backend.measure(843.25, 118.4);
    backend.age(10.1);

    JsonNode probe = Served.json(served.get("/api/v1/status")).get("probes").get(0);
    String metrics = served.get("/metrics").body();

    assertThat(probe.get("temperature_c").isNull()).isTrue();
    assertThat(probe.get("emf_mv").isNull()).isTrue();
    assertThat(probe.get("quality").asText()).isEqualTo("no_answer");
    assertThat(probe.get("age_s").asDouble()).isEqualTo(10.1);
    assertThat(metrics).doesNotContain("climbwatch_temperature_celsius{");
  }

  @Test
  void firingBeginsTakesNotesAndEnds() throws Exception {
    HttpResponse<String> begun = served.post("/api/v1/firings", "{\"name\":\"Tea bowls\"}");
    HttpResponse<String> noted =
        served.post("/api/v1/firings/1/notes", "{\"text\":\"Damper in 2 cm, \\u00e4\"}");
    HttpResponse<String> declared =
        served.post("/api/v1/firings/1/phase", "{\"phase\":\"holding\"}");
    JsonNode history = Served.json(served.get("/api/v1/firings/1/events")).get("events");
    Phase phase = backend.phase();
    HttpResponse<String> ended = served.post("/api/v1/firings/1/end", "");

    assertThat(begun.statusCode()).isEqualTo(201);
    assertThat(begun.headers().firstValue("Location")).contains("/api/v1/firings/1");
    assertThat(Served.json(begun).get("name").asText()).isEqualTo("Tea bowls");
    assertThat(noted.statusCode()).isEqualTo(201);
    assertThat(Served.json(noted).get("text").asText()).isEqualTo("Damper in 2 cm, ä");
    assertThat(declared.statusCode()).isEqualTo(200);
    assertThat(phase).isEqualTo(Phase.HOLDING);
    assertThat(history.get(1).get("kind").asText()).isEqualTo("note");
    assertThat(history.get(1).get("text").asText()).isEqualTo("Damper in 2 cm, ä");
    assertThat(ended.statusCode()).isEqualTo(200);
    assertThat(Served.json(ended).get("ended").asText()).isEqualTo("2026-11-21T07:12:00.000Z");
  }

  @Test
  void firingMayBeginWithoutABody() throws Exception {
    HttpResponse<String> begun = served.post("/api/v1/firings", "");

    assertThat(begun.statusCode()).isEqualTo(201);
    assertThat(Served.json(begun).get("name").asText()).isEmpty();
  }

  @Test
  void alarmIsShelvedForMinutesOrSecondsTakenOffAndReset() throws Exception {
    backend.raise("a-1", AlarmKind.FALLING, "Seen.");

    HttpResponse<String> shelved =
        served.post(
            "/api/v1/alarms/a-1/shelve", "{\"minutes\":7.5,\"who\":\"Ada\",\"note\":\"wind\"}");
    assertThat(shelved.statusCode()).isEqualTo(200);
    assertThat(Served.json(shelved).get("duration_s").asLong()).isEqualTo(450);
    JsonNode alarm = onlyAlarm();
    assertThat(alarm.get("state").asText()).isEqualTo("shelved");
    assertThat(alarm.get("shelved_until").asText()).isEqualTo("2026-11-21T07:19:30.000Z");
    assertThat(alarm.get("who").asText()).isEqualTo("Ada");
    assertThat(alarm.get("note").asText()).isEqualTo("wind");
    assertThat(alarm.get("first_out").asBoolean()).isFalse();

    served.post("/api/v1/alarms/a-1/unshelve", "{}");
    assertThat(onlyAlarm().get("state").asText()).isEqualTo("unacknowledged");
    assertThat(onlyAlarm().get("shelved_until").isNull()).isTrue();
    served.post("/api/v1/alarms/a-1/shelve", "{\"duration_s\":28800}");
    assertThat(onlyAlarm().get("shelved_until").asText()).isEqualTo("2026-11-21T15:12:00.000Z");

    assertThat(served.post("/api/v1/alarms/a-1/reset", "{}").statusCode()).isEqualTo(200);
    assertThat(Served.json(served.get("/api/v1/status")).get("alarms")).isEmpty();
  }

  @Test
  void whatDoesNotLookNowIsListedWithTheReason() throws Exception {
    backend.unwatched(AlarmKind.CLIMB_STALLED, AlarmState.SUPPRESSED_BY_DESIGN);
    backend.unwatched(AlarmKind.FALLING, AlarmState.NORMAL);

    JsonNode status = Served.json(served.get("/api/v1/status"));

    assertThat(status.get("unwatched")).hasSize(1);
    assertThat(status.get("unwatched").get(0).get("kind").asText()).isEqualTo("climb_stalled");
    assertThat(status.get("unwatched").get(0).get("state").asText())
        .isEqualTo("suppressed_by_design");
    assertThat(status.get("alarm_flood").asBoolean()).isFalse();
  }

  private JsonNode onlyAlarm() throws Exception {
    return Served.json(served.get("/api/v1/status")).get("alarms").get(0);
  }

  @Test
  void alarmIsAcknowledged() throws Exception {
    backend.raise("a-1", AlarmKind.FALLING, "Seen.");

    HttpResponse<String> answer =
        served.post("/api/v1/alarms/a-1/acknowledge", "{\"who\":\"Ada\"}");

    assertThat(answer.statusCode()).isEqualTo(200);
    JsonNode alarm = Served.json(served.get("/api/v1/status")).get("alarms").get(0);
    assertThat(alarm.get("state").asText()).isEqualTo("acknowledged");
  }

  @Test
  void historyNamesTheKindOfAnAlarm() throws Exception {
    backend.begin("");
    backend.raise("a-1", AlarmKind.CLIMB_STALLED, "Seen.");

    JsonNode events = Served.json(served.get("/api/v1/firings/1/events")).get("events");

    assertThat(events.get(1).get("title").asText()).isEqualTo(AlarmKind.CLIMB_STALLED.title());
    assertThat(events.get(1).get("state").asText()).isEqualTo("unacknowledged");
  }

  @Test
  void firingsAreListedTheNewestFirst() throws Exception {
    remember(1, "Bisque");
    remember(2, "Stoneware");

    JsonNode firings = Served.json(served.get("/api/v1/firings")).get("firings");
    JsonNode one = Served.json(served.get("/api/v1/firings/1"));

    assertThat(firings).hasSize(2);
    assertThat(firings.get(0).get("name").asText()).isEqualTo("Stoneware");
    assertThat(one.get("peak_c").asDouble()).isEqualTo(1003.2);
    assertThat(one.get("alarms").asInt()).isEqualTo(3);
    assertThat(one.get("began").asText()).isEqualTo("2026-11-21T07:12:00.000Z");
  }

  @Test
  void curveHasAtMostTheWantedPointsAndItsGapsAsNull() throws Exception {
    remember(1, "Bisque");

    JsonNode curve = Served.json(served.get("/api/v1/firings/1/curve?points=50"));

    assertThat(curve.get("elapsed_s")).hasSize(50);
    assertThat(curve.get("elapsed_s").get(1).asDouble()).isEqualTo(4.5);
    assertThat(curve.get("temperature_c").get(0).asDouble()).isEqualTo(20);
    assertThat(curve.get("temperature_c").get(1).isNull()).isTrue();
  }

  @Test
  void curveSaysWhichCalibrationItIsToldWithAndRefusesAnUnknownOne() throws Exception {
    remember(1, "Bisque");
    String curve = "/api/v1/firings/1/curve";

    assertThat(Served.json(served.get(curve)).get("calibration").asText()).isEqualTo("recorded");
    assertThat(Served.json(served.get(curve + "?calibration=none")).get("calibration").asText())
        .isEqualTo("none");
    HttpResponse<String> refused = served.get(curve + "?calibration=best");
    assertThat(refused.statusCode()).isEqualTo(400);
    assertThat(refused.body()).contains("calibration must be one of recorded, none, latest");
  }

  @Test
  void csvComesUnderANameOfOursAndIsWhole() throws Exception {
    remember(1, "../../Bi\"sque");

    HttpResponse<String> response = served.get("/api/v1/firings/1/export.csv");

    assertThat(response.headers().firstValue("Content-Disposition"))
        .contains("attachment; filename=\"firing-1-2026-11-21.csv\"");
    assertThat(response.headers().firstValue("Content-Type").orElseThrow()).startsWith("text/csv");
    try (var rows = CSVFormat.RFC4180.parse(new StringReader(response.body()))) {
      assertThat(rows.getRecords()).hasSize(20_001);
    }
  }

  @Test
  void csvThatBreaksOffIsNotTakenForAWholeOne() throws Exception {
    remember(1, "Bisque");
    backend.breakExport();

    String answer =
        served.raw("GET /api/v1/firings/1/export.csv HTTP/1.1\r\nHost: 127.0.0.1\r\n\r\n");

    assertThat(answer).startsWith("HTTP/1.1 200").contains("Transfer-Encoding: chunked");
    assertThat(answer).doesNotEndWith("\r\n0\r\n\r\n").doesNotContain("journal went away");
  }

  @Test
  void healthTellsTheReasonWhenUnwell() throws Exception {
    HttpResponse<String> well = served.get("/healthz");
    backend.sicken("no reading stored for 42 s");
    HttpResponse<String> unwell = served.get("/healthz");

    assertThat(well.statusCode()).isEqualTo(200);
    assertThat(unwell.statusCode()).isEqualTo(503);
    assertThat(Served.json(unwell).get("detail").asText()).isEqualTo("no reading stored for 42 s");
  }

  @Test
  void pageAndItsFilesAreServedAndNotSentTwice() throws Exception {
    for (String address : PageFiles.RESOURCES.keySet()) {
      HttpResponse<String> first = served.get(address);
      String etag = first.headers().firstValue("ETag").orElseThrow();
      HttpResponse<String> again = served.send(served.to(address).header("If-None-Match", etag));
      HttpResponse<String> packed =
          served.send(served.to(address).header("Accept-Encoding", "gzip"));

      assertThat(first.statusCode()).as(address).isEqualTo(200);
      assertThat(first.body()).as(address).isNotBlank();
      assertThat(again.statusCode()).as(address).isEqualTo(304);
      assertThat(packed.headers().firstValue("Content-Encoding")).as(address).contains("gzip");
      assertThat(first.headers().firstValue("Cache-Control").orElseThrow())
          .contains("must-revalidate");
    }
  }

  /** The page must come quickly over a weak link to the shed. */
  @Test
  void wholePageIsUnder200Kilobytes() throws Exception {
    int bytes = 0;
    for (String address : PageFiles.RESOURCES.keySet()) {
      bytes += served.get(address).body().length();
    }

    assertThat(bytes).isBetween(50_000, 200_000);
  }

  @Test
  void headAnswersWithoutABody() throws Exception {
    HttpResponse<String> head =
        served.send(
            served.to("/api/v1/status").method("HEAD", HttpRequest.BodyPublishers.noBody()));

    assertThat(head.statusCode()).isEqualTo(200);
    assertThat(head.headers().firstValue("Content-Type")).contains("application/json");
    assertThat(head.body()).isEmpty();
  }

  private void remember(long id, String name) {
    long[] elapsedMs = new long[150];
    double[] temperatureC = new double[150];
    for (int i = 0; i < 150; i++) {
      elapsedMs[i] = i * 1_500L;
      temperatureC[i] = i >= 3 && i < 6 ? Double.NaN : 20 + i;
    }
    backend.remember(
        new FiringSummary(
            id,
            name,
            FakeBackend.START,
            Optional.of(FakeBackend.START.plusSeconds(7200)),
            true,
            OptionalDouble.of(1003.2),
            3),
        new CurveColumns("upper", elapsedMs, temperatureC));
  }
}
