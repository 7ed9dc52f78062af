package org.climbwatch.export;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.time.Instant;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class FiringJsonTest {
  private static final Instant BEGAN = Instant.parse("2026-11-25T08:00:00Z");
  private static final int NONE = FiringCsv.NONE;

  private final ByteArrayOutputStream out = new ByteArrayOutputStream();

  @Test
  void aFiringIsOneDocumentOfEventsAndRows() throws IOException {
    FiringJson json = new FiringJson(out);
    json.firing(3, "glaze \"9\"", BEGAN, Optional.of(BEGAN.plusSeconds(3600)), true);
    json.event(
        BEGAN.plusSeconds(2), 2000, "alarm", "probe_fault", "unacknowledged", "look", id("7"));
    json.rows();
    json.deed(BEGAN, 0, "drying", "began", "glaze", "");
    json.reading(
        BEGAN.toEpochMilli(),
        0,
        "upper",
        14_500,
        250,
        NONE,
        -123,
        21_062,
        "good",
        "drying",
        10,
        52,
        NONE);
    json.reading(
        1000,
        1500,
        "upper",
        NONE,
        NONE,
        NONE,
        NONE,
        NONE,
        "open_circuit",
        "drying",
        NONE,
        NONE,
        NONE);
    json.end();

    JsonNode root = parsed();
    assertThat(root.at("/firing/id").asInt()).isEqualTo(3);
    assertThat(root.at("/firing/name").asText()).isEqualTo("glaze \"9\"");
    assertThat(Instant.parse(root.at("/firing/ended").asText())).isEqualTo(BEGAN.plusSeconds(3600));
    assertThat(root.at("/events/0/alarm_id").asText()).isEqualTo("7");
    assertThat(root.at("/events/0/elapsed_s").asDouble()).isEqualTo(2.0);
    assertThat(root.at("/rows/0/action").asText()).isEqualTo("began");
    assertThat(root.at("/rows/1/temperature_c").asDouble()).isEqualTo(14.5);
    assertThat(root.at("/rows/1/uncertainty_c").asDouble()).isEqualTo(2.5);
    assertThat(root.at("/rows/1/climb_c_per_h").isNull()).isTrue();
    assertThat(root.at("/rows/1/emf_mv").asDouble()).isEqualTo(-0.0123);
    assertThat(root.at("/rows/1/cold_junction_c").asDouble()).isEqualTo(21.062);
    assertThat(root.at("/rows/1/samples").asInt()).isEqualTo(10);
    assertThat(root.at("/rows/1/spread_mv").asDouble()).isEqualTo(0.0052);
    assertThat(root.at("/rows/1/spread_c").isNull()).isTrue();
    assertThat(root.at("/rows/2/samples").isNull()).isTrue();
    assertThat(root.at("/rows/2/temperature_c").isNull()).isTrue();
    assertThat(root.at("/rows/2/quality").asText()).isEqualTo("open_circuit");
    assertThat(root.at("/rows/2/elapsed_s").asDouble()).isEqualTo(1.5);
  }

  @Test
  void aFiringThatIsOnHasNoEndAndAnEmptyOneIsStillADocument() throws IOException {
    FiringJson json = new FiringJson(out);
    json.firing(1, "", BEGAN, Optional.empty(), false);
    json.rows();
    json.end();

    JsonNode root = parsed();
    assertThat(root.at("/firing/ended").isNull()).isTrue();
    assertThat(root.at("/events").isArray()).isTrue();
    assertThat(root.at("/rows").isEmpty()).isTrue();
  }

  private static Optional<String> id(String id) {
    return Optional.of(id);
  }

  private JsonNode parsed() throws IOException {
    return new ObjectMapper().readTree(out.toByteArray());
  }
}
