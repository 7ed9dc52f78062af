package org.climbwatch.web;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.time.Instant;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import org.climbwatch.signal.Forecast;
import org.climbwatch.signal.Span;

/** Where the firing is heading: every figure null, with the reason, while it is not known yet. */
final class ForecastJson {
  /** s: a time further away than that is no time to show. */
  private static final double FURTHEST_S = 100 * 3600;

  private final Forecast forecast;
  private final Instant now;

  ForecastJson(Forecast forecast, Instant now) {
    this.forecast = forecast;
    this.now = now;
  }

  void write(JsonGenerator out) throws IOException {
    Optional<Forecast.Known> known = forecast.known();
    Optional<Span> level = known.map(Forecast.Known::levelC);
    Optional<Span> constant = known.map(Forecast.Known::timeConstantS);
    Optional<Span> arrival = known.flatMap(Forecast.Known::arrivalS);
    out.writeObjectFieldStart("forecast");
    Json.number(out, "level_c", part(level, Span::best), 0);
    Json.number(out, "level_low_c", part(level, Span::low), 0);
    Json.number(out, "level_high_c", part(level, Span::high), 0);
    Json.number(out, "time_constant_s", part(constant, Span::best), 0);
    Json.number(out, "time_constant_low_s", part(constant, Span::low), 0);
    Json.number(out, "time_constant_high_s", part(constant, Span::high), 0);
    Json.number(out, "arrival_s", part(arrival, Span::best), 0);
    Json.number(out, "arrival_low_s", part(arrival, Span::low), 0);
    Json.number(out, "arrival_high_s", part(arrival, Span::high), 0);
    time(out, "arrival_at", part(arrival, Span::best));
    time(out, "arrival_low_at", part(arrival, Span::low));
    time(out, "arrival_high_at", part(arrival, Span::high));
    Optional<Forecast.Reason> reason =
        forecast instanceof Forecast.NotYet notYet
            ? Optional.of(notYet.reason())
            : Optional.empty();
    out.writeStringField("reason", reason.map(Forecast.Reason::word).orElse(null));
    out.writeStringField("reason_text", reason.map(Forecast.Reason::plainly).orElse(null));
    out.writeEndObject();
  }

  /** Infinity, a level or a time that does not show, is null. */
  private static OptionalDouble part(Optional<Span> span, ToDoubleFunction<Span> of) {
    return span.isPresent() && Double.isFinite(of.applyAsDouble(span.get()))
        ? OptionalDouble.of(of.applyAsDouble(span.get()))
        : OptionalDouble.empty();
  }

  private void time(JsonGenerator out, String name, OptionalDouble seconds) throws IOException {
    boolean near = seconds.isPresent() && seconds.getAsDouble() < FURTHEST_S;
    out.writeStringField(
        name, near ? Json.time(now.plusMillis(Math.round(seconds.getAsDouble() * 1000))) : null);
  }
}
