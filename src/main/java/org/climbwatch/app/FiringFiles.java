package org.climbwatch.app;

import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import java.util.function.UnaryOperator;
import org.climbwatch.export.FiringCsv;
import org.climbwatch.export.FiringJson;
import org.climbwatch.journal.Calibration;
import org.climbwatch.journal.FiringSummary;
import org.climbwatch.journal.Firings;
import org.climbwatch.journal.ProbeCurve;
import org.climbwatch.journal.RecordedDeed;
import org.climbwatch.journal.RecordedEvent;
import org.climbwatch.journal.RowSink;
import org.climbwatch.watch.WatchSettings;
import org.climbwatch.web.CorrectedBy;

/** Joins the journal's rows to the export's writers. */
final class FiringFiles {
  private FiringFiles() {}

  static void csv(Firings firings, long id, CorrectedBy by, OutputStream out) throws IOException {
    FiringCsv csv = new FiringCsv(out);
    csv.header();
    rows(firings, id, by, new CsvSink(csv));
    csv.flush();
  }

  /** The curves of a firing's probes, the followed one first. */
  static List<ProbeCurve> curves(Firings firings, long id, CorrectedBy by, int points) {
    return by == CorrectedBy.RECORDED
        ? firings.curves(id, points)
        : RecomputedCurves.of(firings, id, corrections(firings, id, by), points);
  }

  private static void rows(Firings firings, long id, CorrectedBy by, RowSink sink)
      throws IOException {
    if (by == CorrectedBy.RECORDED) {
      firings.rows(id, sink);
    } else {
      RecomputedRows.stream(firings, id, corrections(firings, id, by), sink);
    }
  }

  private static UnaryOperator<WatchSettings> corrections(
      Firings firings, long id, CorrectedBy by) {
    if (by == CorrectedBy.NONE) {
      return Corrections::none;
    }
    List<Calibration> ofThen =
        Corrections.ofTheCouples(firings.one(id).orElseThrow().began(), firings.calibrations());
    return settings -> Corrections.inForce(settings, ofThen);
  }

  static void json(Firings firings, long id, CorrectedBy by, OutputStream out) throws IOException {
    FiringSummary firing = firings.one(id).orElseThrow();
    FiringJson json = new FiringJson(out);
    json.firing(firing.id(), firing.name(), firing.began(), firing.ended(), firing.byItself());
    for (RecordedEvent event : firings.events(id)) {
      json.event(
          event.at(),
          event.elapsedMs(),
          event.event(),
          event.subject(),
          event.state(),
          event.message(),
          event.alarmId());
    }
    json.rows();
    rows(firings, id, by, new JsonSink(json));
    json.end();
  }

  private record JsonSink(FiringJson json) implements RowSink {
    @Override
    public void reading(
        long wallMs,
        long elapsedMs,
        String probe,
        int temperatureMilliC,
        int uncertaintyCentiC,
        int climbDeciCPerHour,
        int emfTenthUv,
        int coldJunctionMilliC,
        String quality,
        String phase,
        int samples,
        int spreadTenthUv,
        int spreadMilliC)
        throws IOException {
      json.reading(
          wallMs,
          elapsedMs,
          probe,
          temperatureMilliC,
          uncertaintyCentiC,
          climbDeciCPerHour,
          emfTenthUv,
          coldJunctionMilliC,
          quality,
          phase,
          samples,
          spreadTenthUv,
          spreadMilliC);
    }

    @Override
    public void deed(RecordedDeed deed, String phase) throws IOException {
      json.deed(deed.at(), deed.elapsedMs(), phase, deed.action(), deed.subject(), deed.text());
    }
  }

  private record CsvSink(FiringCsv csv) implements RowSink {
    @Override
    public void reading(
        long wallMs,
        long elapsedMs,
        String probe,
        int temperatureMilliC,
        int uncertaintyCentiC,
        int climbDeciCPerHour,
        int emfTenthUv,
        int coldJunctionMilliC,
        String quality,
        String phase,
        int samples,
        int spreadTenthUv,
        int spreadMilliC)
        throws IOException {
      csv.reading(
          wallMs,
          elapsedMs,
          probe,
          temperatureMilliC,
          uncertaintyCentiC,
          climbDeciCPerHour,
          emfTenthUv,
          coldJunctionMilliC,
          quality,
          phase,
          samples,
          spreadTenthUv,
          spreadMilliC);
    }

    /** Settings are of this installation and stay in the journal. */
    @Override
    public void deed(RecordedDeed deed, String phase) throws IOException {
      if (deed.action().equals("configured")) {
        return;
      }
      String shownPhase = deed.action().equals("declared") ? deed.subject() : phase;
      String action = deed.action().equals("remarked") ? "noted" : deed.action();
      csv.deed(
          deed.at().toEpochMilli(),
          deed.elapsedMs(),
          DeedNote.probe(deed),
          shownPhase,
          DeedNote.of(deed),
          action);
    }
  }
}
