package org.climbwatch.app;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.climbwatch.journal.Firings;
import org.climbwatch.web.CorrectedBy;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** A firing's record as a file. */
@Command(
    name = "export",
    description = "Writes a firing's whole record, also while the daemon runs.",
    footerHeading = "%nExample%n",
    footer = "  climbwatch export latest --out firing.csv")
final class ExportCommand implements Callable<Integer> {
  @Mixin private DataOption data = new DataOption();

  @Parameters(paramLabel = "FIRING", description = "Its number, or latest.")
  private String firing;

  @Option(
      names = "--format",
      paramLabel = "csv|json",
      defaultValue = "csv",
      description = "csv (default) or json.")
  private String format;

  @Option(
      names = "--calibration",
      paramLabel = "recorded|none|latest",
      defaultValue = "recorded",
      description = {
        "Temperatures as shown then (recorded, the default), or computed again from the raw"
            + " signal: as read (none), or by the latest calibration of each probe (latest)."
      })
  private String calibration;

  @Option(
      names = "--out",
      paramLabel = "FILE",
      description = "Where to (default: standard output).")
  private Optional<Path> out = Optional.empty();

  @Override
  public Integer call() throws IOException {
    if (!format.equals("csv") && !format.equals("json")) {
      throw new Refusal("--format \"" + format + "\" is unknown; allowed: csv, json");
    }
    CorrectedBy by =
        CorrectedBy.ofWord(calibration)
            .orElseThrow(
                () ->
                    new Refusal(
                        "--calibration \""
                            + calibration
                            + "\" is unknown; allowed: "
                            + CorrectedBy.words()));
    try (Firings firings = Firings.open(data.journal())) {
      long id = id(firings);
      try (OutputStream stream = Output.open(out)) {
        if (format.equals("csv")) {
          FiringFiles.csv(firings, id, by, stream);
        } else {
          FiringFiles.json(firings, id, by, stream);
        }
      }
    }
    return Main.WELL;
  }

  private long id(Firings firings) {
    if (firing.equals("latest")) {
      return firings
          .latest()
          .orElseThrow(() -> new Refusal("no firing is recorded yet; begin one, or let one begin"));
    }
    try {
      long id = Long.parseLong(firing);
      if (firings.one(id).isPresent()) {
        return id;
      }
    } catch (NumberFormatException notANumber) {
      // told below
    }
    throw new Refusal(
        "there is no firing \""
            + firing
            + "\"; `"
            + Called.name()
            + " firings` lists them, or write latest");
  }
}
