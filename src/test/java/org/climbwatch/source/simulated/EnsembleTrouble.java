package org.climbwatch.source.simulated;

/**
 * What goes wrong in an ensemble firing.
 *
 * @param kind what
 * @param atShare of the way from outside to target at which it begins
 * @param minutes that it takes to come on, or that it lasts
 * @param left share of the gas that is left in the end
 */
record EnsembleTrouble(Kind kind, double atShare, double minutes, double left) {
  enum Kind {
    HEALTHY,
    BOTTLE_FREEZES,
    FIRE_TOO_SMALL,
    FLAME_LOST,
    ONE_BURNER_OUT,
    OPEN_CIRCUIT,
    PROBE_NOISE,
    STUCK
  }

  static EnsembleTrouble drawn(Draw draw) {
    double which = draw.even();
    double atShare = draw.between(0.3, 0.95);
    if (which < 0.45) {
      return new EnsembleTrouble(Kind.HEALTHY, 2, 0, 1);
    }
    if (which < 0.63) {
      return new EnsembleTrouble(
          Kind.BOTTLE_FREEZES, atShare, draw.logBetween(15, 120), draw.between(0.25, 0.75));
    }
    if (which < 0.75) {
      return new EnsembleTrouble(Kind.FIRE_TOO_SMALL, 0, 0, 1);
    }
    if (which < 0.83) {
      return new EnsembleTrouble(Kind.FLAME_LOST, draw.between(0.25, 0.98), 0, 0);
    }
    if (which < 0.91) {
      int burners = 2 + draw.below(3);
      return new EnsembleTrouble(Kind.ONE_BURNER_OUT, atShare, 0, 1 - 1.0 / burners);
    }
    Kind[] sensor = {Kind.OPEN_CIRCUIT, Kind.PROBE_NOISE, Kind.STUCK};
    return new EnsembleTrouble(sensor[draw.below(3)], atShare, draw.logBetween(0.3, 15), 1);
  }

  /** Share of the set gas that the bottle still gives, so many minutes after it began. */
  double bottle(double sinceMinutes) {
    if (sinceMinutes < 0 || kind == Kind.HEALTHY || kind == Kind.FIRE_TOO_SMALL) {
      return 1;
    }
    return kind == Kind.BOTTLE_FREEZES ? 1 - (1 - left) * Math.min(sinceMinutes / minutes, 1) : 1;
  }
}
