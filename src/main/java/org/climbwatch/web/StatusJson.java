package org.climbwatch.web;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.time.Instant;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.function.Function;
import org.climbwatch.reading.Fault;
import org.climbwatch.reading.Moment;
import org.climbwatch.reading.Reading;
import org.climbwatch.signal.Climb;
import org.climbwatch.watch.Judged;
import org.climbwatch.watch.View;

/** The status document of the contract. */
final class StatusJson {
  private final Status status;
  private final Function<Moment, Instant> wallTime;
  private final boolean passphraseNeeded;

  StatusJson(Status status, Function<Moment, Instant> wallTime, boolean passphraseNeeded) {
    this.status = status;
    this.wallTime = wallTime;
    this.passphraseNeeded = passphraseNeeded;
  }

  void write(JsonGenerator out) throws IOException {
    View view = status.view();
    out.writeStartObject();
    out.writeStringField("time", Json.time(status.time()));
    out.writeStringField("kiln", view.kiln());
    out.writeStringField("phase", view.phase().word());
    firing(out);
    out.writeArrayFieldStart("probes");
    for (int i = 0; i < status.devices().size(); i++) {
      probe(out, status.devices().get(i), view.probes().get(i).latest());
    }
    out.writeEndArray();
    new ForecastJson(view.forecast(), status.time()).write(out);
    out.writeArrayFieldStart("alarms");
    for (View.StandingAlarm alarm : view.alarms()) {
      AlarmJson.standing(out, alarm, view.probes().get(0).name(), wallTime);
    }
    out.writeEndArray();
    AlarmJson.unwatched(out, view.watched());
    out.writeBooleanField("alarm_flood", view.alarmFlood());
    Json.number(out, "target_c", view.targetC(), 1);
    out.writeStringField("source", status.devices().get(0).line());
    out.writeFieldName("stale_after_s");
    Json.number(out, status.staleAfterS(), 1);
    out.writeArrayFieldStart("notices");
    for (String notice : status.notices()) {
      out.writeString(notice);
    }
    out.writeEndArray();
    out.writeBooleanField("passphrase_needed", passphraseNeeded);
    out.writeEndObject();
  }

  private void firing(JsonGenerator out) throws IOException {
    Optional<View.OpenFiring> open = status.view().firing();
    if (open.isEmpty()) {
      out.writeNullField("firing");
      return;
    }
    out.writeObjectFieldStart("firing");
    Json.number(out, "id", status.firingId());
    out.writeStringField("name", open.get().name());
    out.writeStringField("since", Json.time(wallTime.apply(open.get().since())));
    out.writeBooleanField("by_itself", open.get().byItself());
    out.writeBooleanField("gas_off_said", open.get().gasOffSaid());
    Json.number(out, "elapsed_s", status.elapsedS(), 1);
    out.writeEndObject();
  }

  private void probe(JsonGenerator out, Status.Device device, Optional<Judged> latest)
      throws IOException {
    out.writeStartObject();
    out.writeStringField("name", device.probe());
    if (latest.isEmpty() || status.stale(device)) {
      nothing(out, latest.flatMap(Judged::fault).orElse(Fault.NO_ANSWER));
    } else {
      measured(out, latest.get());
    }
    Json.number(out, "age_s", device.latestAgeS(), 1);
    out.writeStringField("source", device.line());
    out.writeStringField("checked", device.checked().map(Json::time).orElse(null));
    out.writeEndObject();
  }

  /** A reading too old, or none yet: no number of it may pass for the present. */
  private static void nothing(JsonGenerator out, Fault fault) throws IOException {
    out.writeNullField("temperature_c");
    out.writeNullField("uncertainty_c");
    out.writeNullField("climb_c_per_h");
    out.writeNullField("climb_uncertainty_c_per_h");
    out.writeNullField("emf_mv");
    out.writeNullField("cold_junction_c");
    out.writeNullField("samples");
    out.writeNullField("spread_c");
    out.writeStringField("quality", fault.word());
    out.writeStringField("quality_text", fault.plainly());
    out.writeBooleanField("spike", false);
  }

  /** The fields of one reading and what the core made of it. */
  static void measured(JsonGenerator out, Judged judged) throws IOException {
    OptionalDouble climb = OptionalDouble.empty();
    OptionalDouble climbUncertainty = OptionalDouble.empty();
    if (judged.climb().isPresent()) {
      Climb known = judged.climb().get();
      climb = OptionalDouble.of(known.cPerHour());
      climbUncertainty = OptionalDouble.of(known.uncertaintyCPerHour());
    }
    Json.number(out, "temperature_c", judged.temperatureC(), 3);
    Json.number(out, "uncertainty_c", judged.uncertaintyC(), 2);
    Json.number(out, "climb_c_per_h", climb, 2);
    Json.number(out, "climb_uncertainty_c_per_h", climbUncertainty, 2);
    raw(out, judged.reading());
    Json.number(out, "spread_c", judged.spreadC(), 3);
    out.writeStringField("quality", judged.fault().map(Fault::word).orElse("good"));
    out.writeStringField("quality_text", judged.fault().map(Fault::plainly).orElse("good"));
    out.writeBooleanField("spike", judged.spike());
  }

  private static void raw(JsonGenerator out, Reading reading) throws IOException {
    OptionalDouble emfMv = OptionalDouble.empty();
    OptionalDouble coldJunctionC = OptionalDouble.empty();
    OptionalLong samples = OptionalLong.empty();
    if (reading instanceof Reading.Emf emf) {
      samples = OptionalLong.of(emf.samples());
      emfMv = OptionalDouble.of(emf.emfMv());
      coldJunctionC = OptionalDouble.of(emf.coldJunctionC());
    } else if (reading instanceof Reading.Linearised linearised) {
      samples = OptionalLong.of(linearised.samples());
      coldJunctionC = linearised.coldJunctionC();
    }
    Json.number(out, "emf_mv", emfMv, 4);
    Json.number(out, "cold_junction_c", coldJunctionC, 3);
    Json.number(out, "samples", samples);
  }
}
