package org.climbwatch.ensemble;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import java.util.function.Function;

/** How a rule that warns of stalls does over many firings. */
final class Score {
  int stalls;
  int warned;
  int before;
  int falseAlarms;
  int inHolds;
  double hours;

  /** s from the true stall to the warning, negative when ahead; by seed. */
  final TreeMap<Integer, Double> delayS = new TreeMap<>();

  /** Firings worth a look: with false alarms, and stalls that nobody warned of. */
  final List<String> odd = new ArrayList<>();

  Score(List<Followed> firings, Function<Followed, List<Stood>> rule) {
    for (int i = 0; i < firings.size(); i++) {
      add(i, firings.get(i), rule.apply(firings.get(i)));
    }
  }

  private void add(int index, Followed one, List<Stood> all) {
    hours += one.healthyUntilS() / 3600;
    for (Stood stood : all) {
      double at = stood.fromS();
      if (at < one.healthyUntilS()) {
        falseAlarms++;
        odd.add("false:" + one.firing.kind() + one.seed + "@" + Math.round(at / 60));
        inHolds += one.inUndeclaredHold(at) ? 1 : 0;
      }
    }
    double stallS = one.stallS();
    if (stallS < 0) {
      return;
    }
    stalls++;
    for (Stood stood : all) {
      // one that stands already when it may be meant is not raised anew
      boolean stands = !one.isSudden() && stood.untilS() > one.warningFromS();
      double at = stands ? Math.max(stood.fromS(), one.warningFromS()) : stood.fromS();
      if (at >= one.warningFromS() && at <= one.firing.gasOffS()) {
        warned++;
        before += at <= stallS ? 1 : 0;
        delayS.put(index, at - stallS);
        return;
      }
    }
    odd.add("missed:" + one.firing.kind() + one.seed + "@" + Math.round(stallS / 60));
  }

  double share() {
    return stalls == 0 ? 0 : 100.0 * warned / stalls;
  }

  double falsePer100h() {
    return 100 * falseAlarms / hours;
  }

  double medianDelayMinutes() {
    return median(delayS.values().stream().sorted().toList()) / 60;
  }

  static double median(List<Double> sorted) {
    return sorted.isEmpty() ? Double.NaN : sorted.get(sorted.size() / 2);
  }
}
