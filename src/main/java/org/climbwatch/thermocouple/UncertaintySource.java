package org.climbwatch.thermocouple;

/**
 * What can make a temperature wrong: for each, how great it is, how it is spread and how much of it
 * reaches the hot junction. {@link Uncertainty} adds them up and {@link Budget} itemises them, so
 * that both say the same to the last bit.
 *
 * @see "JCGM 100:2008 (GUM), 4.3.7 (limits), 4.2.3 (mean of samples), 5.1.2 (sum of squares)"
 */
enum UncertaintySource {
  WIRE("wire", "°C") {
    @Override
    double value(MeasuringChain chain, double readC, double spreadC) {
      double limitC = ToleranceLimits.continuedC(chain.toleranceClass(), chain.type(), readC);
      return chain.correction().shareUnknown(readC) * limitC;
    }
  },
  AMPLIFIER("amplifier", "°C") {
    @Override
    double value(MeasuringChain chain, double readC, double spreadC) {
      return chain.correction().shareUnknown(readC) * chain.errors().amplifierC();
    }
  },
  OFFSET("amplifier offset", "µV") {
    @Override
    double value(MeasuringChain chain, double readC, double spreadC) {
      return chain.correction().shareUnknown(readC) * chain.errors().offsetUv();
    }

    @Override
    double sensitivity(double hotUvPerC, double coldUvPerC, double emfMv) {
      return 1 / hotUvPerC;
    }
  },
  GAIN("amplifier gain", "ppm") {
    @Override
    double value(MeasuringChain chain, double readC, double spreadC) {
      return chain.correction().shareUnknown(readC) * chain.errors().gainPpm();
    }

    @Override
    double sensitivity(double hotUvPerC, double coldUvPerC, double emfMv) {
      return Math.abs(emfMv) / 1000 / hotUvPerC;
    }
  },
  COLD_JUNCTION("cold junction", "°C") {
    @Override
    double value(MeasuringChain chain, double readC, double spreadC) {
      return chain.errors().coldJunctionC();
    }

    @Override
    double sensitivity(double hotUvPerC, double coldUvPerC, double emfMv) {
      // Type B has a falling slope at a cool terminal
      return Math.abs(coldUvPerC) / hotUvPerC;
    }
  },
  STEP("steps", "°C") {
    @Override
    double value(MeasuringChain chain, double readC, double spreadC) {
      return chain.errors().stepC() / 2;
    }
  },
  VOLTAGE_STEP("steps of the voltage", "µV") {
    @Override
    double value(MeasuringChain chain, double readC, double spreadC) {
      return chain.errors().stepUv() / 2;
    }

    @Override
    double sensitivity(double hotUvPerC, double coldUvPerC, double emfMv) {
      return 1 / hotUvPerC;
    }
  },
  NOISE("noise", "°C") {
    @Override
    double value(MeasuringChain chain, double readC, double spreadC) {
      return spreadC;
    }

    @Override
    double divisor(int samples) {
      return Math.sqrt(samples);
    }
  },
  CALIBRATION("calibration", "°C") {
    @Override
    double value(MeasuringChain chain, double readC, double spreadC) {
      return chain.correction().expandedC(readC);
    }

    @Override
    double divisor(int samples) {
      return Uncertainty.COVERAGE;
    }
  },
  DRIFT("drift", "°C") {
    @Override
    double value(MeasuringChain chain, double readC, double spreadC) {
      return chain.errors().driftC();
    }
  };

  private static final double ROOT_3 = Math.sqrt(3);

  private final String title;
  private final String unit;

  UncertaintySource(String title, String unit) {
    this.title = title;
    this.unit = unit;
  }

  String title() {
    return title;
  }

  String unit() {
    return unit;
  }

  /** Limit, half step, standard deviation or expanded uncertainty, in {@link #unit}. */
  abstract double value(MeasuringChain chain, double readC, double spreadC);

  /** What makes a standard uncertainty of the value: the root of 3 for limits. */
  double divisor(int samples) {
    return ROOT_3;
  }

  /**
   * °C at the hot junction for one unit of the value.
   *
   * @param hotUvPerC slope of the couple at the hot junction
   * @param coldUvPerC slope of the couple at the terminals
   * @param emfMv mV between the terminals
   */
  double sensitivity(double hotUvPerC, double coldUvPerC, double emfMv) {
    return 1;
  }
}
