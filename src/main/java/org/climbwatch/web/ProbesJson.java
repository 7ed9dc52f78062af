package org.climbwatch.web;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.List;

/** What each probe has been through. */
final class ProbesJson {
  private ProbesJson() {}

  static void write(JsonGenerator out, List<ProbeLife> probes) throws IOException {
    out.writeStartObject();
    out.writeArrayFieldStart("probes");
    for (ProbeLife probe : probes) {
      probe(out, probe);
    }
    out.writeEndArray();
    out.writeEndObject();
  }

  static void probe(JsonGenerator out, ProbeLife probe) throws IOException {
    out.writeStartObject();
    out.writeStringField("name", probe.probe());
    out.writeStringField("type", probe.type());
    if (probe.fitted().isPresent()) {
      out.writeStringField("fitted", probe.fitted().get().toString());
    } else {
      out.writeNullField("fitted");
    }
    out.writeNumberField("firings", probe.firings());
    out.writeNumberField("high_firings", probe.highFirings());
    hours(out, "hours_over_800_c", probe.hoursOver800C());
    hours(out, "hours_over_1000_c", probe.hoursOver1000C());
    hours(out, "hours_over_1100_c", probe.hoursOver1100C());
    hours(out, "hours_over_1200_c", probe.hoursOver1200C());
    if (probe.drift().isPresent()) {
      out.writeStringField("drift", probe.drift().get());
    } else {
      out.writeNullField("drift");
    }
    out.writeStringField("replace", probe.replace());
    out.writeStringField("advice", probe.advice());
    out.writeEndObject();
  }

  private static void hours(JsonGenerator out, String name, double hours) throws IOException {
    out.writeFieldName(name);
    Json.number(out, hours, 2);
  }
}
