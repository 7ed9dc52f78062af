package org.climbwatch.web;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.Locale;
import org.climbwatch.thermocouple.Budget;

/** An itemised uncertainty as JSON. */
final class BudgetJson {
  private BudgetJson() {}

  static void write(JsonGenerator out, ProbeBudget probe) throws IOException {
    out.writeStartObject();
    out.writeStringField("probe", probe.probe());
    out.writeStringField("checked", probe.checked().map(Json::time).orElse(null));
    out.writeStringField("checked_how", probe.checkedHow());
    if (probe.budget().isEmpty()) {
      out.writeNullField("budget");
    } else {
      out.writeObjectFieldStart("budget");
      budget(out, probe.budget().get());
      out.writeEndObject();
    }
    out.writeEndObject();
  }

  private static void budget(JsonGenerator out, Budget budget) throws IOException {
    out.writeStringField("text", budget.text());
    number(out, "temperature_c", budget.temperatureC(), 3);
    out.writeArrayFieldStart("components");
    for (Budget.Component each : budget.components()) {
      component(out, each);
    }
    out.writeEndArray();
    number(out, "combined_c", budget.combinedC(), 4);
    number(out, "coverage", budget.coverage(), 2);
    number(out, "expanded_c", budget.expandedC(), 4);
    out.writeArrayFieldStart("notes");
    for (String note : budget.notes()) {
      out.writeString(note);
    }
    out.writeEndArray();
  }

  private static void component(JsonGenerator out, Budget.Component component) throws IOException {
    out.writeStartObject();
    out.writeStringField("name", component.name());
    out.writeStringField("from", component.from());
    number(out, "value", component.value(), 4);
    out.writeStringField("unit", component.unit());
    out.writeStringField("distribution", component.distribution().name().toLowerCase(Locale.ROOT));
    number(out, "divisor", component.divisor(), 4);
    number(out, "sensitivity", component.sensitivity(), 6);
    number(out, "standard_c", component.standardC(), 4);
    out.writeEndObject();
  }

  private static void number(JsonGenerator out, String name, double value, int decimals)
      throws IOException {
    out.writeFieldName(name);
    Json.number(out, value, decimals);
  }
}
