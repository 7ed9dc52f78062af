package org.climbwatch.ensemble;

import java.util.ArrayList;
import java.util.List;

/**
 * The rule that everybody would write: climb under X for Y. It returns as the shipped rule does, at
 * half as much again, after 120 s.
 */
record PlainRule(double leastCPerHour, double minutes) {
  private static final double OFF_S = 120;

  List<Stood> stood(List<Followed.Look> looks) {
    List<Stood> raised = new ArrayList<>();
    double since = -1;
    double goneSince = -1;
    boolean standing = false;
    for (Followed.Look look : looks) {
      double limit = leastCPerHour * (standing ? 1.5 : 1);
      boolean holds = look.applies() && look.climbCPerHour() < limit;
      if (holds) {
        goneSince = -1;
        since = since < 0 ? look.second() : since;
        if (!standing && look.second() - since >= minutes * 60) {
          standing = true;
          raised.add(Stood.since(look.second()));
        }
      } else if (!Double.isNaN(look.climbCPerHour()) || !look.applies()) {
        since = -1;
        goneSince = goneSince < 0 ? look.second() : goneSince;
        boolean goesOn = look.applies() && look.second() - goneSince < OFF_S;
        if (standing && !goesOn) {
          raised.set(raised.size() - 1, raised.get(raised.size() - 1).until(look.second()));
        }
        standing = standing && goesOn;
      }
    }
    return raised;
  }
}
