package org.climbwatch.watch;

import java.util.List;
import java.util.concurrent.TimeUnit;
import org.climbwatch.reading.Moment;
import org.climbwatch.reading.Reading;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/**
 * What does one step of the core cost, all rules looking, in the middle of a firing?
 *
 * <pre>
 *   mvn -q -Pjmh test-compile exec:exec -Dexec.executable=java \
 *     -Dexec.args="-cp %classpath org.openjdk.jmh.Main WatchBenchmark -prof gc -f 1 -wi 3 -i 5"
 * </pre>
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
public class WatchBenchmark {
  private static final List<Input> START =
      new Script(20).deed(at -> new Input.Began(at, "")).climb(150, 7200).inputs();

  private Watch watch;
  private long second;

  @Setup
  public void intoAFiring() {
    watch = new Watch(Script.SETTINGS);
    START.forEach(watch::accept);
    second = 7200;
  }

  @Benchmark
  public Outcome oneReading() {
    second++;
    // the emf sways as a flame makes it, and goes round in a range that raises nothing
    double emfMv = 12 + (second % 30_000) * 0.0008 + (second % 7) * 0.002;
    return watch.accept(
        new Input.Measured(Reading.emf(new Moment(0, second * 1000), "upper", emfMv, 25)));
  }
}
