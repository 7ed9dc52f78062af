package org.climbwatch.web;

import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import io.javalin.http.Handler;
import java.io.IOException;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.climbwatch.firing.Phase;

/** Every address that is served, and what it asks of the backend. */
final class Routes {
  private static final String API = "/api/v1";
  private static final String FIRING = API + "/firings/{id}";
  private static final int FEWEST_POINTS = 10;
  private static final int USUAL_POINTS = 1_000;
  private static final int MOST_POINTS = 20_000;
  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ISO_LOCAL_DATE.withZone(ZoneOffset.UTC);

  private final Backend backend;
  private final LiveHub live;
  private final Passphrase passphrase;
  private final PageFiles pageFiles = new PageFiles();

  Routes(Backend backend, LiveHub live, Passphrase passphrase) {
    this.backend = backend;
    this.live = live;
    this.passphrase = passphrase;
  }

  void register(JavalinConfig config) {
    for (String address : PageFiles.RESOURCES.keySet()) {
      look(config, address, context -> pageFiles.serve(context, address));
    }
    look(config, API + "/status", this::status);
    look(config, API + "/probes", this::probes);
    look(config, API + "/firings", this::firings);
    look(config, FIRING, context -> firing(context, 200, id(context)));
    look(config, FIRING + "/curve", this::curve);
    look(config, FIRING + "/events", this::events);
    look(config, API + "/probes/{name}/uncertainty", this::uncertainty);
    look(config, "/metrics", this::metrics);
    look(config, "/healthz", this::health);
    config.routes.get(FIRING + "/export.csv", this::exportCsv);
    config.routes.get(API + "/live", live::open);
    config.routes.post(API + "/firings", this::begin);
    config.routes.post(FIRING + "/end", this::end);
    config.routes.post(FIRING + "/phase", this::declare);
    config.routes.post(FIRING + "/notes", this::note);
    new AlarmRoutes(backend).register(config, API + "/alarms/{id}");
    new TrialRoutes(backend.trials()).register(config, API);
  }

  private static void look(JavalinConfig config, String address, Handler handler) {
    config.routes.get(address, handler);
    config.routes.head(address, handler);
  }

  private void status(Context context) {
    StatusJson json = new StatusJson(backend.status(), backend::wallTime, passphrase.needed());
    json(context, json::write);
  }

  private void probes(Context context) {
    List<ProbeLife> probes = backend.probes();
    json(context, out -> ProbesJson.write(out, probes));
  }

  private void firings(Context context) {
    List<FiringSummary> firings = backend.firings();
    json(context, out -> RecordJson.firings(out, firings));
  }

  private void firing(Context context, int status, long id) {
    FiringSummary firing = known(id);
    context.status(status);
    json(context, out -> RecordJson.firing(out, firing));
  }

  private void curve(Context context) {
    int points = points(context.queryParam("points"));
    long id = known(id(context)).id();
    CorrectedBy by = correctedBy(context.queryParam("calibration"));
    List<CurveColumns> curves = backend.curves(id, by, points);
    json(context, out -> RecordJson.curves(out, id, by, curves));
  }

  private void events(Context context) {
    long id = known(id(context)).id();
    List<EventLine> lines = backend.events(id);
    json(context, out -> RecordJson.events(out, id, lines));
  }

  private void uncertainty(Context context) {
    String probe = context.pathParam("name");
    ProbeBudget budget =
        backend
            .budget(probe)
            .orElseThrow(
                () ->
                    new Refused(
                        404,
                        "No such probe",
                        "There is no probe \"" + probe + "\"; GET /api/v1/status lists them."));
    json(context, out -> BudgetJson.write(out, budget));
  }

  private void exportCsv(Context context) throws IOException {
    FiringSummary firing = known(id(context));
    CorrectedBy by = correctedBy(context.queryParam("calibration"));
    String which = by == CorrectedBy.RECORDED ? "" : "-calibration-" + by.word();
    String name = "firing-" + firing.id() + "-" + DAY.format(firing.began()) + which + ".csv";
    context.header("Content-Disposition", "attachment; filename=\"" + name + "\"");
    context.res().setContentType("text/csv;charset=utf-8;header=present");
    backend.exportCsv(firing.id(), by, context.res().getOutputStream());
  }

  private void begin(Context context) throws IOException {
    String name = RequestBody.of(context, List.of("name")).text("name", 200);
    long id = backend.begin(name);
    context.header("Location", API + "/firings/" + id);
    firing(context, 201, id);
  }

  private void end(Context context) throws IOException {
    RequestBody.of(context, List.of());
    long id = id(context);
    backend.end(id);
    firing(context, 200, id);
  }

  private void declare(Context context) throws IOException {
    String word = RequestBody.of(context, List.of("phase")).needed("phase", 20);
    Phase phase = declared(word);
    long id = id(context);
    backend.declare(id, phase);
    json(
        context,
        out -> {
          out.writeStartObject();
          out.writeNumberField("firing", id);
          out.writeStringField("phase", phase.word());
          out.writeEndObject();
        });
  }

  private static Phase declared(String word) {
    for (Phase phase : List.of(Phase.CLIMBING, Phase.HOLDING, Phase.COOLING)) {
      if (phase.word().equals(word)) {
        return phase;
      }
    }
    throw Refused.badRequest(
        "Field \"phase\" must be climbing, holding or cooling, was \"" + word + "\".");
  }

  private void note(Context context) throws IOException {
    String text = RequestBody.of(context, List.of("text")).needed("text", 4_000);
    long id = id(context);
    backend.note(id, text);
    context.status(201);
    json(
        context,
        out -> {
          out.writeStartObject();
          out.writeNumberField("firing", id);
          out.writeStringField("text", text);
          out.writeEndObject();
        });
  }

  private void metrics(Context context) {
    List<Metric> metrics = new ArrayList<>(StatusMetrics.of(backend.status()));
    metrics.add(Metric.gauge("climbwatch_live_streams", "", "Open live streams.", live.clients()));
    metrics.addAll(backend.metrics());
    context.result(OpenMetrics.bytes(metrics));
    context.res().setContentType(OpenMetrics.TYPE);
  }

  private void health(Context context) {
    Optional<String> unwell = backend.unwell();
    if (unwell.isPresent()) {
      throw new Refused(503, "Not well", unwell.get());
    }
    json(
        context,
        out -> {
          out.writeStartObject();
          out.writeStringField("status", "well");
          out.writeEndObject();
        });
  }

  private FiringSummary known(long id) {
    return backend.firing(id).orElseThrow(() -> Refused.noFiring(Long.toString(id)));
  }

  private static long id(Context context) {
    String id = context.pathParam("id");
    if (!id.matches("\\d{1,18}")) {
      throw Refused.noFiring("\"" + id + "\"");
    }
    return Long.parseLong(id);
  }

  private static CorrectedBy correctedBy(String given) {
    return given == null
        ? CorrectedBy.RECORDED
        : CorrectedBy.ofWord(given)
            .orElseThrow(
                () ->
                    Refused.badRequest(
                        "calibration must be one of "
                            + CorrectedBy.words()
                            + ", was \""
                            + given
                            + "\"."));
  }

  private static int points(String given) {
    if (given == null) {
      return USUAL_POINTS;
    }
    int points = given.matches("\\d{1,6}") ? Integer.parseInt(given) : -1;
    if (points < FEWEST_POINTS || points > MOST_POINTS) {
      throw Refused.badRequest(
          "points must be " + FEWEST_POINTS + " to " + MOST_POINTS + ", was \"" + given + "\".");
    }
    return points;
  }

  private static void json(Context context, Json.Writer writer) {
    context.result(Json.bytes(writer));
    context.contentType(Json.TYPE);
  }
}
