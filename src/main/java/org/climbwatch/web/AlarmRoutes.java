package org.climbwatch.web;

import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import java.io.IOException;
import java.time.Duration;
import java.util.List;
import java.util.OptionalDouble;
import org.climbwatch.alarm.Shelving;
import org.climbwatch.alarm.Signature;

/** What the potter may do about an alarm. */
final class AlarmRoutes {
  private static final List<String> SIGNED = List.of("who", "note");

  private final Backend backend;

  AlarmRoutes(Backend backend) {
    this.backend = backend;
  }

  /**
   * @param alarm the address of one alarm, with its {@code {id}}
   */
  void register(JavalinConfig config, String alarm) {
    config.routes.post(alarm + "/acknowledge", context -> signed(context, backend::acknowledge));
    config.routes.post(alarm + "/shelve", this::shelve);
    config.routes.post(alarm + "/unshelve", context -> signed(context, backend::unshelve));
    config.routes.post(alarm + "/reset", context -> signed(context, backend::reset));
  }

  private interface Deed {
    void about(String alarmId, Signature by);
  }

  private static void signed(Context context, Deed deed) throws IOException {
    Signature by = signature(RequestBody.of(context, SIGNED));
    String alarmId = context.pathParam("id");
    deed.about(alarmId, by);
    answer(context, alarmId, by, out -> {});
  }

  private void shelve(Context context) throws IOException {
    RequestBody body = RequestBody.of(context, SIGNED, List.of("minutes", "duration_s"));
    Shelving shelving = new Shelving(time(body), signature(body));
    String alarmId = context.pathParam("id");
    backend.shelve(alarmId, shelving);
    answer(
        context,
        alarmId,
        shelving.by(),
        out -> out.writeNumberField("duration_s", shelving.time().toSeconds()));
  }

  private static Duration time(RequestBody body) {
    OptionalDouble minutes = body.number("minutes");
    OptionalDouble seconds = body.number("duration_s");
    if (minutes.isPresent() == seconds.isPresent()) {
      throw Refused.badRequest("Say for how long: either \"minutes\" or \"duration_s\".");
    }
    double wanted = minutes.isPresent() ? minutes.getAsDouble() * 60 : seconds.getAsDouble();
    boolean allowed =
        wanted >= Shelving.SHORTEST.toSeconds() && wanted <= Shelving.LONGEST.toSeconds();
    if (!allowed || wanted != Math.rint(wanted)) {
      throw Refused.badRequest(
          "An alarm is shelved for 1 to 480 minutes (60 to 28800 whole seconds), never for ever;"
              + " was "
              + (minutes.isPresent() ? minutes.getAsDouble() + " min." : wanted + " s."));
    }
    return Duration.ofSeconds(Math.round(wanted));
  }

  private static Signature signature(RequestBody body) {
    return new Signature(body.text("who", 100), body.text("note", 1_000));
  }

  private static void answer(Context context, String alarmId, Signature by, Json.Writer more) {
    context.result(
        Json.bytes(
            out -> {
              out.writeStartObject();
              out.writeStringField("id", alarmId);
              out.writeStringField("who", by.who());
              out.writeStringField("note", by.note());
              more.write(out);
              out.writeEndObject();
            }));
    context.contentType(Json.TYPE);
  }
}
