package org.climbwatch.browser;

import java.time.Duration;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.climbwatch.firing.Phase;
import org.climbwatch.web.CurveColumns;
import org.climbwatch.web.EventLine;
import org.climbwatch.web.FakeBackend;
import org.climbwatch.web.FiringSummary;

/**
 * A stoneware firing of the community pottery's top-hat kiln, made up for the page's tests: slow to
 * 120 °C, then up through red heat, with an evening's gap in the record when the power went.
 */
public final class StonewareFiring {
  public static final String STALL_MESSAGE =
      "Meadow Lane top-hat, probe top: climb 12 °C/h at 1004 °C, under 20 °C/h for 10 min. The fire"
          + " gives no more than the kiln loses. Check in this order: the flame at every burner;"
          + " bottle and gauge (frost, sinking pressure); regulator and hose; damper and flame at"
          + " the flue (too much or too little air); gas too high. Change one thing a little and"
          + " wait 10 to 15 min. If a flame is out: gas off at burner and bottle, do not relight,"
          + " air the kiln for 5 min or longer.";
  public static final String FAST_MESSAGE =
      "Meadow Lane top-hat, probe top: climb 212 °C/h at 486 °C, over 200 °C/h for 5 min. Thick"
          + " ware may crack. Turn the gas down a little.";

  private StonewareFiring() {}

  /** A kiln that is cold, with two firings behind it. */
  public static FakeBackend idle() {
    FakeBackend backend = new FakeBackend();
    past(backend, 1, "Bisque, first load", 9, 1003.2, 0);
    past(backend, 2, "Fast reduction, tea bowls", 2, 986.5, 2);
    backend.elapse(Duration.ofDays(4).toMillis());
    backend.target(1240);
    backend.measure(18.4, 0.2);
    return backend;
  }

  /** The same kiln five hours after lighting, climbing through 1004 °C. */
  public static FakeBackend climbing() {
    FakeBackend backend = idle();
    long id = backend.begin("Stoneware, celadon test tiles");
    CurveColumns curve = curve(5.2, 1004, 11);
    backend.drawn(curve);
    backend.wrote(minutes(12), EventLine.NOTE, "", "", "Both burners low, damper a hand open.");
    backend.wrote(minutes(58), "phase", "climbing", "entered", "Climbing: pore water has left.");
    backend.wrote(minutes(131), "alarm", "climb_too_fast", "unacknowledged", FAST_MESSAGE);
    backend.wrote(minutes(133), "alarm", "climb_too_fast", "acknowledged", FAST_MESSAGE);
    backend.wrote(minutes(146), "alarm", "climb_too_fast", "normal", FAST_MESSAGE);
    backend.wrote(
        minutes(268), EventLine.NOTE, "", "", "Gas 12 kPa, damper in by 2 cm, light reduction.");
    backend.declare(id, Phase.CLIMBING);
    backend.measure(1004.2, 94.6);
    return backend;
  }

  private static void past(
      FakeBackend backend, long id, String name, double hours, double peakC, int alarms) {
    backend.remember(
        new FiringSummary(
            id,
            name,
            FakeBackend.START.plus(Duration.ofDays(id)),
            Optional.of(
                FakeBackend.START.plus(Duration.ofDays(id)).plusSeconds((long) (hours * 3600))),
            false,
            OptionalDouble.of(peakC),
            alarms),
        curve(hours, peakC, id));
  }

  private static long minutes(long minutes) {
    return minutes * 60_000;
  }

  private static CurveColumns curve(double hours, double endC, long seed) {
    Random noise = new Random(seed);
    int length = (int) (hours * 120);
    long[] elapsedMs = new long[length];
    double[] temperatureC = new double[length];
    for (int i = 0; i < length; i++) {
      elapsedMs[i] = i * 30_000L;
      double t = i / (double) (length - 1);
      double shape = 0.10 * Math.sin(Math.min(t, 0.2) * Math.PI / 0.4) + 0.9 * Math.pow(t, 1.05);
      temperatureC[i] = 18 + (endC - 18) * shape + noise.nextGaussian() * 1.2;
      if (t > 0.62 && t < 0.66) {
        temperatureC[i] = Double.NaN;
      }
    }
    return new CurveColumns("upper", elapsedMs, temperatureC);
  }
}
