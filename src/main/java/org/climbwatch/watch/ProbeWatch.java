package org.climbwatch.watch;

import java.util.Optional;
import java.util.OptionalDouble;
import org.climbwatch.firing.Phase;
import org.climbwatch.reading.Fault;
import org.climbwatch.reading.Moment;
import org.climbwatch.reading.Reading;
import org.climbwatch.signal.Climb;
import org.climbwatch.signal.FallOnset;
import org.climbwatch.signal.Health;
import org.climbwatch.signal.SignalHealth;
import org.climbwatch.signal.SignalSettings;
import org.climbwatch.signal.Track;

/** One probe's run of readings: what the newest one says, and what the ones before make of it. */
final class ProbeWatch {
  private static final long SLOWEST_INTERVAL_MILLIS = 10_000;

  private ProbeSettings settings;
  private SignalSettings signal;
  private Judge judge;
  private Track track;
  private final Health health = new Health();
  private final IdleKeeper idleKeeper = new IdleKeeper();
  private Optional<Judged> latest = Optional.empty();
  private Optional<Moment> lastKeptAt = Optional.empty();

  /** When the device last said anything; empty where unkept readings may have followed on it. */
  private Optional<Moment> answeredAt = Optional.empty();

  private long unwatchedMillis;
  private boolean resumed;
  private boolean seesLeaps = true;
  private OptionalDouble coupleEndC;
  private boolean away;

  ProbeWatch(ProbeSettings settings, SignalSettings signal) {
    this.settings = settings;
    this.signal = signal;
    judge = new Judge(settings);
    track = new Track(signal);
    coupleEndC = OptionalDouble.of(settings.type().highestC());
  }

  /** Goes on under other settings of the same probe; the run starts anew if it depends on them. */
  void configure(ProbeSettings other, SignalSettings otherSignal) {
    if (!other.equals(settings) || !otherSignal.equals(signal)) {
      track = new Track(otherSignal);
      health.reset();
      health.trustLevel();
    }
    settings = other;
    signal = otherSignal;
    judge = new Judge(other);
    coupleEndC = OptionalDouble.of(other.type().highestC());
  }

  /** What a reading says before anything is known of its neighbours. */
  Judged judge(Reading reading, Phase phase) {
    return judge.judge(reading, phase);
  }

  /** Whether a reading of an idle kiln is worth a place in the journal. */
  boolean keepsWhileIdle(Judged judged) {
    return idleKeeper.keeps(
        judged.reading().at(), judged.temperatureC().orElse(Double.NaN), judged.fault());
  }

  /** A reading that is shown and forgotten. */
  void pass(Judged judged) {
    latest = Optional.of(judged);
  }

  /**
   * Notes that a reading is kept. While idle, readings lie over a minute apart on purpose, and
   * delays run on over that.
   *
   * @return whether it comes behind a gap, so that nothing is known of what lay between
   */
  boolean behindGap(Moment at, boolean idle) {
    long longestMillis = idle ? IdleKeeper.PACE_MILLIS + SLOWEST_INTERVAL_MILLIS : Track.GAP_MILLIS;
    boolean gap =
        lastKeptAt.isPresent()
            && (!lastKeptAt.get().sameBoot(at) || at.millisSince(lastKeptAt.get()) > longestMillis);
    unwatchedMillis =
        gap && !resumed && lastKeptAt.get().sameBoot(at) ? at.millisSince(lastKeptAt.get()) : 0;
    resumed = false;
    if (gap) {
      track.reset();
      health.reset();
    }
    lastKeptAt = Optional.of(at);
    return gap;
  }

  /** Takes a temperature into the run; answers whether it was set aside as a spike. */
  boolean takesForSpike(Judged judged) {
    long millis = judged.reading().at().millis();
    if (judged.temperatureC().isEmpty()) {
      judged
          .fault()
          .filter(fault -> fault.wrong() && !fault.silence())
          .ifPresent(fault -> health.fault(millis));
      return false;
    }
    double temperatureC = judged.temperatureC().getAsDouble();
    if (looksLikeAJump(judged, temperatureC)) {
      track.restartRates();
    }
    return track.isSpike(millis, temperatureC);
  }

  private boolean looksLikeAJump(Judged judged, double temperatureC) {
    long millis = judged.reading().at().millis();
    if (judged.reading() instanceof Reading.Emf emf) {
      OptionalDouble coldC = OptionalDouble.of(emf.coldJunctionC());
      return health.jumps(millis, emf.emfMv(), temperatureC, coldC, judged.spreadC());
    }
    OptionalDouble coldC = ((Reading.Linearised) judged.reading()).coldJunctionC();
    return health.jumps(millis, temperatureC, temperatureC, coldC, judged.spreadC());
  }

  /** A firing begins. */
  void begin() {
    away = false;
    track.countAfresh();
    health.countAfresh();
  }

  /** °C, the middle one of a minute that has just become full. */
  OptionalDouble freshMiddleC() {
    return health.freshMiddleC();
  }

  /** What the run says about the probe itself. */
  SignalHealth health() {
    SignalHealth now = health.now();
    return seesLeaps || now.leapC().isEmpty() ? now : now.withoutLeap();
  }

  /** Whether it matters that the signal has left the kiln. */
  void seesLeaps(boolean sees) {
    seesLeaps = sees;
  }

  /** Whether the signal, which had left the kiln, is back since the last reading. */
  boolean comesBack() {
    boolean before = away;
    away = seesLeaps && health.isAway();
    return before && !away;
  }

  /** Whether the newest reading may be none of the kiln's. */
  boolean leftKiln() {
    return seesLeaps && health.leftKiln();
  }

  /** The potter says what the kiln does, and thereby that its number is right. */
  void trustLevel() {
    health.trustLevel();
  }

  /** The reading with what the run says of it, which is then the newest. */
  Judged conclude(Judged judged, boolean spike, Phase phase) {
    Judged concluded = Judge.with(judged, spike, climbBeside(judged.fault()), phase);
    latest = Optional.of(concluded);
    if (phase == Phase.IDLE) {
      answeredAt = Optional.empty();
    } else if (!judged.fault().map(Fault::silence).orElse(false)) {
      answeredAt = Optional.of(judged.reading().at());
    }
    return concluded;
  }

  /** s before the newest kept reading for which the running program took none; 0 without a gap. */
  double unwatchedS() {
    return unwatchedMillis / 1000.0;
  }

  /** s since the device last said anything, where that is known. */
  OptionalDouble silentS(Moment at) {
    return answeredAt.isPresent() && answeredAt.get().sameBoot(at)
        ? OptionalDouble.of(at.millisSince(answeredAt.get()) / 1000.0)
        : OptionalDouble.empty();
  }

  /** Goes on after a restart of the program or the machine. */
  void resume() {
    answeredAt = Optional.empty();
    resumed = true;
    track.reset();
    health.resume();
  }

  /** °C that the probe may be used to. */
  OptionalDouble limitC() {
    return settings.limitC();
  }

  /** °C beyond which the couple tells nothing. */
  OptionalDouble coupleEndC() {
    return coupleEndC;
  }

  String name() {
    return settings.name();
  }

  Optional<Judged> latest() {
    return latest;
  }

  /** °C without spikes; empty while the reading carries a fault. */
  OptionalDouble temperatureC(Optional<Fault> fault) {
    return fault.isPresent() ? OptionalDouble.empty() : track.temperatureC();
  }

  /** Whether it is to read about what the followed probe reads. */
  boolean isCompared() {
    return settings.compared();
  }

  /**
   * °C, the newest kept one, unless it is older than a gap.
   *
   * @param noSingleOne whether the middle of the last minute is to stand for it
   */
  OptionalDouble temperatureNear(Moment at, boolean noSingleOne) {
    boolean near =
        lastKeptAt.isPresent()
            && lastKeptAt.get().sameBoot(at)
            && at.millisSince(lastKeptAt.get()) <= Track.GAP_MILLIS;
    if (!near || latest.isEmpty() || latest.get().fault().isPresent()) {
      return OptionalDouble.empty();
    }
    SignalHealth now = health();
    boolean middle = noSingleOne && now.leapC().isEmpty() && now.middleC().isPresent();
    return middle ? now.middleC() : track.temperatureC();
  }

  Optional<Climb> climbBeside(Optional<Fault> fault) {
    return fault.isPresent() ? Optional.empty() : track.climb();
  }

  Optional<Climb> quickClimbBeside(Optional<Fault> fault) {
    return fault.isPresent() ? Optional.empty() : track.quickClimb();
  }

  Optional<FallOnset> onsetBeside(Optional<Fault> fault) {
    return fault.isPresent() ? Optional.empty() : track.onset();
  }

  OptionalDouble recentPeakC() {
    return track.recentPeakC();
  }
}
