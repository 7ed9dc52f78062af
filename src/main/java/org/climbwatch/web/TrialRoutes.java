package org.climbwatch.web;

import com.fasterxml.jackson.core.JsonGenerator;
import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import io.javalin.http.Handler;
import java.io.IOException;
import java.util.List;
import java.util.Optional;

/** Trying alarm settings on past firings. */
final class TrialRoutes {
  private final Trials trials;

  TrialRoutes(Trials trials) {
    this.trials = trials;
  }

  /**
   * @param api what every address begins with
   */
  void register(JavalinConfig config, String api) {
    String one = api + "/trials/{id}";
    look(
        config,
        api + "/alarm-settings",
        context -> json(context, out -> TrialJson.settings(out, trials.inForce())));
    config.routes.post(api + "/trials", context -> begin(context, api + "/trials/"));
    look(config, api + "/trials", context -> json(context, this::kept));
    look(config, one, context -> answer(context, known(context)));
    config.routes.post(one + "/cancel", this::cancel);
    config.routes.get(one + "/differences.csv", this::csv);
  }

  private static void look(JavalinConfig config, String address, Handler handler) {
    config.routes.get(address, handler);
    config.routes.head(address, handler);
  }

  private void begin(Context context, String trialsAddress) throws IOException {
    TrialSoFar trial = trials.begin(RequestBody.of(context, TrialBody::read));
    context.header("Location", trialsAddress + trial.id());
    context.status(202);
    answer(context, trial);
  }

  private void cancel(Context context) throws IOException {
    RequestBody.of(context, List.of());
    trials.cancel(known(context).id());
    answer(context, known(context));
  }

  private void csv(Context context) throws IOException {
    TrialSoFar trial = known(context);
    if (trial.state() == TrialSoFar.State.RUNNING) {
      throw new Refused(
          409, "The trial is running", "Trial " + trial.id() + " is still running; ask again.");
    }
    context.header(
        "Content-Disposition", "attachment; filename=\"alarm-trial-" + trial.id() + ".csv\"");
    context.res().setContentType("text/csv;charset=utf-8;header=present");
    trials.csv(trial.id(), context.res().getOutputStream());
  }

  private TrialSoFar known(Context context) {
    String id = context.pathParam("id");
    return (id.matches("\\d{1,18}") ? trials.one(Long.parseLong(id)) : Optional.<TrialSoFar>empty())
        .orElseThrow(
            () ->
                new Refused(
                    404,
                    "No such trial",
                    "There is no trial \""
                        + id
                        + "\"; the newest few are kept, and none behind a restart."));
  }

  private void answer(Context context, TrialSoFar trial) {
    json(context, out -> TrialJson.trial(out, trial, trials.inForce()));
  }

  private void kept(JsonGenerator out) throws IOException {
    TrialJson.kept(out, trials.kept());
  }

  private static void json(Context context, Json.Writer writer) {
    context.result(Json.bytes(writer));
    context.contentType(Json.TYPE);
  }
}
