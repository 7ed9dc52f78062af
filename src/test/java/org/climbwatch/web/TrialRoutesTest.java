package org.climbwatch.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.net.http.HttpResponse;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.climbwatch.alarm.AlarmKind;
import org.climbwatch.alarm.RuleChange;
import org.climbwatch.alarm.RuleKind;
import org.climbwatch.alarm.Rules;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What may be tried is read strictly, and what is wrong is named with its key and its range. */
class TrialRoutesTest {
  private static final String STALL =
      "{\"last\":5,\"alarm\":{\"climb_stalled\":{\"on_delay_s\":300,\"enabled\":true}}}";

  private Served served;
  private FakeTrials trials;

  @BeforeEach
  void start() throws Exception {
    served = new Served();
    trials = served.backend.trials();
  }

  @AfterEach
  void stop() {
    served.close();
  }

  @Test
  void everyRuleIsListedWithWhatCanBeSetOfItAndItsLimits() throws Exception {
    JsonNode answer = Served.json(served.get("/api/v1/alarm-settings"));

    assertThat(answer.get("most_firings").asInt()).isEqualTo(20);
    assertThat(answer.get("rules")).hasSize(Rules.ALL.size());
    for (int i = 0; i < Rules.ALL.size(); i++) {
      RuleKind kind = Rules.ALL.get(i);
      JsonNode rule = answer.get("rules").get(i);
      assertThat(rule.get("kind").asText()).isEqualTo(kind.alarm().word());
      assertThat(rule.get("title").asText()).isEqualTo(kind.alarm().title());
      assertThat(rule.get("enabled").asBoolean()).isTrue();
      List<RuleKind.Number> numbers = RuleChange.settable(kind);
      assertThat(rule.get("settings")).hasSize(numbers.size());
      for (int j = 0; j < numbers.size(); j++) {
        JsonNode setting = rule.get("settings").get(j);
        assertThat(setting.get("key").asText()).isEqualTo(numbers.get(j).key());
        assertThat(setting.get("value").asDouble()).isEqualTo(numbers.get(j).usual());
        assertThat(setting.get("usual").asDouble()).isEqualTo(numbers.get(j).usual());
        assertThat(setting.get("low").asDouble()).isEqualTo(numbers.get(j).low());
        assertThat(setting.get("high").asDouble()).isEqualTo(numbers.get(j).high());
      }
    }
  }

  @Test
  void anOrderIsTakenAndItsPlaceNamed() throws Exception {
    HttpResponse<String> response = served.post("/api/v1/trials", STALL);

    assertThat(response.statusCode()).isEqualTo(202);
    assertThat(response.headers().firstValue("Location")).contains("/api/v1/trials/1");
    RuleChange change = trials.order().changes().get(0);
    assertThat(change.kind().alarm()).isEqualTo(AlarmKind.CLIMB_STALLED);
    assertThat(change.enabled()).contains(true);
    assertThat(change.numbers()).isEqualTo(Map.of("on_delay_s", 300.0));
    assertThat(trials.order().last()).isEqualTo(OptionalInt.of(5));
    JsonNode trial = Served.json(response);
    assertThat(trial.get("state").asText()).isEqualTo("running");
    assertThat(trial.get("firings").asInt()).isEqualTo(2);
    assertThat(trial.get("tried").asInt()).isZero();
    assertThat(trial.get("rules").toString()).isEqualTo("[\"climb_stalled\"]");
    assertThat(trial.get("toml").asText())
        .isEqualTo(
            """
            [alarm.climb_stalled]
            enabled = true
            least_climb_c_per_h = 20
            from_c = 200
            patience_min = 20
            on_delay_s = 300  # was 600
            off_delay_s = 120
            """);
  }

  @Test
  void firingsMayBeNamedAndSeveralRulesTriedTogether() throws Exception {
    served.post(
        "/api/v1/trials",
        "{\"firings\":[12,3,12],\"alarm\":{\"falling\":{\"drop_c\":6.5},"
            + "\"sagging\":{\"enabled\":false}}}");

    assertThat(trials.order().firings()).containsExactly(12L, 3L);
    assertThat(trials.order().changes())
        .extracting(change -> change.kind().alarm())
        .containsExactly(AlarmKind.FALLING, AlarmKind.SAGGING);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "{'climb_stalled':{'on_delay_s':7201}}"
            + "|alarm.climb_stalled.on_delay_s = 7201 is out of range (allowed: 0 to 7200).",
        "{'climb_stalled':{'least_climb_c_per_h':0}}"
            + "|alarm.climb_stalled.least_climb_c_per_h = 0 is out of range (allowed: 1 to 500).",
        "{'climb_stalled':{'least_climb_c_per_h':1e999}}"
            + "|alarm.climb_stalled.least_climb_c_per_h = 1e999 is out of range (allowed: 1 to"
            + " 500).",
        "{'climb_stalled':{'on_delay_s':'5 min'}}"
            + "|alarm.climb_stalled.on_delay_s = \"5 min\" is not a number (allowed: 0 to 7200).",
        "{'climb_stalled':{'on_delay_s':[1]}}"
            + "|alarm.climb_stalled.on_delay_s = an object or a list is not a number (allowed: 0 to"
            + " 7200).",
        "{'climb_stalled':{'on_delay_s':null}}"
            + "|alarm.climb_stalled.on_delay_s = null is not a number (allowed: 0 to 7200).",
        "{'climb_stalled':{'enabled':1}}"
            + "|alarm.climb_stalled.enabled = 1 is neither true nor false.",
        "{'climb_stalled':{'drop_c':{'a':{}}}}"
            + "|alarm.climb_stalled.drop_c is an unknown key (known: enabled, least_climb_c_per_h,"
            + " from_c, patience_min, on_delay_s, off_delay_s).",
        "{'climb_stalled':{'from_c':9999,'on_delay_s':-1}}"
            + "|alarm.climb_stalled.from_c = 9999 is out of range (allowed: 0 to 1400);"
            + " alarm.climb_stalled.on_delay_s = -1 is out of range (allowed: 0 to 7200).",
        "{'climb_stalled':{}}|alarm.climb_stalled names no setting (known: enabled,"
            + " least_climb_c_per_h, from_c, patience_min, on_delay_s, off_delay_s).",
        "{'climb_stalled':7}|Field \"alarm.climb_stalled\" must be a JSON object.",
        "{'climb_stalled':{'from_c':1,'from_c':2}}"
            + "|Field \"alarm.climb_stalled.from_c\" is there twice.",
        "[]|Field \"alarm\" must be a JSON object."
      })
  void nonsenseIsRefusedWithItsKeyAndWhatIsAllowed(String alarm, String detail) throws Exception {
    HttpResponse<String> response =
        served.post("/api/v1/trials", "{\"last\":1,\"alarm\":" + alarm.replace('\'', '"') + "}");

    assertThat(response.statusCode()).as(response.body()).isEqualTo(400);
    assertThat(response.headers().firstValue("Content-Type")).contains("application/problem+json");
    assertThat(Served.json(response).get("detail").asText()).isEqualTo(detail);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "{'alarm':{'falling':{'drop_c':5}}}|Say on which firings",
        "{'last':1,'firings':[1],'alarm':{'falling':{'drop_c':5}}}|Say on which firings",
        "{'last':0,'alarm':{'falling':{'drop_c':5}}}|Field \"last\" must be 1 to 20, was 0.",
        "{'last':21,'alarm':{'falling':{'drop_c':5}}}|Field \"last\" must be 1 to 20, was 21.",
        "{'last':2.5,'alarm':{'falling':{'drop_c':5}}}|Field \"last\" takes whole numbers only.",
        "{'last':99999999999999999999,'alarm':{'falling':{'drop_c':5}}}|takes whole numbers only.",
        "{'firings':[],'alarm':{'falling':{'drop_c':5}}}|must name 1 to 20 firings, had 0;",
        "{'firings':['1'],'alarm':{'falling':{'drop_c':5}}}|takes whole numbers only.",
        "{'firings':7,'alarm':{'falling':{'drop_c':5}}}|must be a list of numbers",
        "{'firings':[1,2,3,4,5,6,7,8,9,10,11,12,13,14,15,16,17,18,19,20,21],"
            + "'alarm':{'falling':{'drop_c':5}}}|must name 1 to 20 firings, had 21;",
        "{'last':1}|Say what to try",
        "{'last':1,'alarm':{}}|Say what to try",
        "{'last':1,'alarm':{'fallen':{'a':1}}}|alarm.fallen is an unknown rule (known: over_temp",
        "{'last':1,'alert':{}}|Unknown field \"alert\"; allowed: [firings, last, alarm].",
        "{'last':1,'last':1}|Field \"last\" is there twice.",
        "[1]|The body must be a JSON object",
        "{'last':1,'alarm':{'falling':{'drop_c':5}}} {}|There is more after the JSON object.",
        "{'last':1,'alarm':{'falling':{'drop_c':5}}|The body is not JSON",
        "{'last':1,'alarm':{'falling':{'drop_c':NaN}}}|The body is not JSON",
        "{'firings':[1|The body is not JSON"
      })
  void anOrderThatSaysTooLittleOrTooMuchIsRefused(String body, String detail) throws Exception {
    HttpResponse<String> response = served.post("/api/v1/trials", body.replace('\'', '"'));

    assertThat(response.statusCode()).as(response.body()).isEqualTo(400);
    assertThat(Served.json(response).get("detail").asText()).contains(detail);
  }

  @Test
  void aSecondOrderIsRefusedWhileOneRuns() throws Exception {
    served.post("/api/v1/trials", STALL);

    HttpResponse<String> second = served.post("/api/v1/trials", STALL);

    assertThat(second.statusCode()).isEqualTo(409);
    assertThat(Served.json(second).get("title").asText()).isEqualTo("A trial is running");
    assertThat(served.get("/api/v1/trials/1/differences.csv").statusCode()).isEqualTo(409);
    JsonNode cancelled = Served.json(served.post("/api/v1/trials/1/cancel", ""));
    assertThat(cancelled.get("state").asText()).isEqualTo("cancelled");
    assertThat(served.post("/api/v1/trials", STALL).statusCode()).isEqualTo(202);
  }

  /** Who is refused must be able to find the trial that is at work, by whomever it was begun. */
  @Test
  void allThatAreKeptAreListedTheNewestFirst() throws Exception {
    assertThat(served.get("/api/v1/trials").body()).isEqualTo("{\"trials\":[]}");
    served.post("/api/v1/trials", STALL);
    trials.stand(TrialSoFar.State.DONE, List.of());
    served.post("/api/v1/trials", STALL);

    assertThat(Served.json(served.get("/api/v1/trials")).toString())
        .isEqualTo(
            "{\"trials\":[{\"id\":2,\"state\":\"running\",\"firings\":2,\"tried\":0,\"took_s\":12.3,"
                + "\"rules\":[\"climb_stalled\"]},{\"id\":1,\"state\":\"done\",\"firings\":2,"
                + "\"tried\":0,\"took_s\":12.3,\"rules\":[\"climb_stalled\"]}]}");
    assertThat(Served.json(served.get("/api/v1/trials/1")).get("state").asText()).isEqualTo("done");
    assertThat(served.get("/api/v1/trials/1/differences.csv").statusCode()).isEqualTo(200);
  }

  @Test
  void differencesAreToldInJsonAndAsCsvToKeep() throws Exception {
    served.post("/api/v1/trials", STALL);
    FiringSummary firing =
        new FiringSummary(
            7,
            "Stoneware",
            Instant.parse("2026-11-20T06:00:00Z"),
            Optional.of(Instant.parse("2026-11-20T15:00:00Z")),
            false,
            OptionalDouble.of(1251),
            2);
    trials.stand(
        TrialSoFar.State.DONE,
        List.of(
            new TriedFiring(
                firing,
                List.of(
                    new TriedFiring.Alarm(
                        AlarmKind.CLIMB_STALLED,
                        Optional.empty(),
                        OptionalDouble.of(9000),
                        OptionalDouble.of(8640.5),
                        "earlier",
                        "Seen."),
                    new TriedFiring.Alarm(
                        AlarmKind.PROBE_FAULT,
                        Optional.of("lower"),
                        OptionalDouble.of(12),
                        OptionalDouble.empty(),
                        "gone",
                        "Seen.")))));

    JsonNode trial = Served.json(served.get("/api/v1/trials/1"));
    HttpResponse<String> csv = served.get("/api/v1/trials/1/differences.csv");

    assertThat(trial.get("state").asText()).isEqualTo("done");
    assertThat(trial.get("took_s").asDouble()).isEqualTo(12.3);
    assertThat(trial.get("counts").toString())
        .isEqualTo("{\"earlier\":1,\"later\":0,\"new\":0,\"gone\":1,\"same\":0}");
    JsonNode result = trial.get("results").get(0);
    assertThat(result.get("firing").asLong()).isEqualTo(7);
    assertThat(result.get("name").asText()).isEqualTo("Stoneware");
    assertThat(result.get("began").asText()).isEqualTo("2026-11-20T06:00:00.000Z");
    assertThat(result.get("differences").get(0).toString())
        .isEqualTo(
            "{\"kind\":\"climb_stalled\",\"title\":\"Climb has stalled\",\"probe\":null,"
                + "\"was_s\":9000,\"would_s\":8640.5,\"change\":\"earlier\",\"message\":\"Seen.\"}");
    assertThat(result.get("differences").get(1).get("probe").asText()).isEqualTo("lower");
    assertThat(result.get("differences").get(1).get("would_s").isNull()).isTrue();
    assertThat(csv.headers().firstValue("Content-Type").orElse("")).startsWith("text/csv");
    assertThat(csv.headers().firstValue("Content-Disposition"))
        .contains("attachment; filename=\"alarm-trial-1.csv\"");
    assertThat(csv.body()).isEqualTo("firing,name\r\n");
  }

  @Test
  void aTrialThatIsNotThereIsAProblem() throws Exception {
    for (String id : List.of("1", "0", "x", "99999999999999999999")) {
      HttpResponse<String> response = served.get("/api/v1/trials/" + id);
      assertThat(response.statusCode()).isEqualTo(404);
      assertThat(Served.json(response).get("title").asText()).isEqualTo("No such trial");
    }
    assertThat(served.post("/api/v1/trials/1/cancel", "").statusCode()).isEqualTo(404);
  }

  /** A trial costs the machine's time, so it is asked for as a change is. */
  @Test
  void aTrialNeedsThePassphraseAndOurOwnPage() throws Exception {
    try (Served locked = new Served(new FakeBackend(), "ash glaze 1280")) {
      assertThat(locked.post("/api/v1/trials", STALL).statusCode()).isEqualTo(401);
      assertThat(
              locked
                  .send(
                      locked
                          .change("/api/v1/trials", STALL)
                          .header("Authorization", "Bearer ash glaze 1280"))
                  .statusCode())
          .isEqualTo(202);
      assertThat(locked.get("/api/v1/trials/1").statusCode()).isEqualTo(200);
      assertThat(locked.post("/api/v1/trials/1/cancel", "").statusCode()).isEqualTo(401);
    }
    assertThat(
            served
                .send(served.change("/api/v1/trials", STALL).header("Origin", "http://example.org"))
                .statusCode())
        .isEqualTo(403);
  }
}
