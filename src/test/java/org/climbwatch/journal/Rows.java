package org.climbwatch.journal;

import java.util.ArrayList;
import java.util.List;

/** Keeps all rows that it is given. */
final class Rows implements RowSink {
  record Look(
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
      int spreadMilliC) {}

  final List<Look> readings = new ArrayList<>();
  final List<RecordedDeed> deeds = new ArrayList<>();
  final List<String> phasesOfDeeds = new ArrayList<>();
  final List<String> order = new ArrayList<>();

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
      int spreadMilliC) {
    readings.add(
        new Look(
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
            spreadMilliC));
    order.add(temperatureMilliC == NONE ? "none" : Integer.toString(temperatureMilliC));
  }

  @Override
  public void deed(RecordedDeed deed, String phase) {
    deeds.add(deed);
    phasesOfDeeds.add(phase);
    order.add(deed.action());
  }

  List<Double> temperatures() {
    return readings.stream().map(look -> look.temperatureMilliC() / 1e3).toList();
  }
}
