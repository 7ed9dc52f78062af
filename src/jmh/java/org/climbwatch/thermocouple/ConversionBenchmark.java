package org.climbwatch.thermocouple;

import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Level;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * What does one conversion, emf to °C, cost against the bare published inverse polynomial, and does
 * it allocate? From the root of the project, one line:
 *
 * <pre>
 * mvn -q -Pjmh test-compile exec:exec -Dexec.executable=java -Dexec.args="-cp %classpath org.openjdk.jmh.Main ConversionBenchmark -prof gc -rf json -rff target/jmh.json"
 * </pre>
 *
 * <p>Inside the quotes {@code -p type=K} picks one type, {@code -jvmArgsAppend
 * -XX:TieredStopAtLevel=1} the compiler tier that the service runs with.
 *
 * <p>Type K, ns, 2-core x86-64 (EPYC) with other work running, OpenJDK 17.0.15, 2026-11-25; the
 * ratio of the first two lines carries over, the times do not:
 *
 * <pre>
 *                       first tier   all tiers   worst error, -200 to 1372 °C
 * conversion                   7.2         3.3   5e-8 °C
 * publishedInverse            10.1         5.7   0.054 °C
 * referenceFunction             26          20   (the other way: mV from °C)
 * </pre>
 *
 * <p>The figure of {@code uncertainty} (all sources, one point of calibration) is in DEVELOPERS.md.
 *
 * <p>All eight types, with the errors of both, are in DEVELOPERS.md. Nothing is allocated.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 3, time = 500, timeUnit = TimeUnit.MILLISECONDS)
@Measurement(iterations = 3, time = 500, timeUnit = TimeUnit.MILLISECONDS)
@Fork(1)
public class ConversionBenchmark {
  private static final int EMFS = 1024;

  @Param({"B", "E", "J", "K", "N", "R", "S", "T"})
  public ThermocoupleType type;

  private final double[] emfsMv = new double[EMFS];
  private final double[] temperaturesC = new double[EMFS];
  private PublishedInverse published;
  private MeasuringChain chain;

  /** The emfs rise, as in a firing, through the range that both methods cover. */
  @Setup(Level.Trial)
  public void makeEmfs() {
    Random dice = new Random(60584);
    published = new PublishedInverse(type);
    chain =
        new MeasuringChain(
            type,
            ToleranceClass.IEC_2,
            new ProbeErrors(4, 0, 0, 2, ProbeErrors.USUAL_STEP_C, 0, 0),
            new Correction(List.of(new Correction.Point(0, -0.4, 0.3))));
    double lowC = PublishedInverse.lowestC(type);
    for (int i = 0; i < EMFS; i++) {
      temperaturesC[i] = lowC + (type.highestC() - lowC) * (i + dice.nextDouble()) / EMFS;
      emfsMv[i] = type.emfMv(temperaturesC[i]);
    }
  }

  @Benchmark
  @OperationsPerInvocation(EMFS)
  public double conversion() {
    double sum = 0;
    for (double emfMv : emfsMv) {
      sum += type.temperatureC(emfMv);
    }
    return sum;
  }

  @Benchmark
  @OperationsPerInvocation(EMFS)
  public double publishedInverse() {
    double sum = 0;
    for (double emfMv : emfsMv) {
      sum += published.temperatureC(emfMv);
    }
    return sum;
  }

  @Benchmark
  @OperationsPerInvocation(EMFS)
  public double referenceFunction() {
    double sum = 0;
    for (double t : temperaturesC) {
      sum += type.emfMv(t);
    }
    return sum;
  }

  @Benchmark
  @OperationsPerInvocation(EMFS)
  public double uncertainty() {
    double sum = 0;
    for (double t : temperaturesC) {
      sum += Uncertainty.expandedC(chain, t, 25, 0.1, 8);
    }
    return sum;
  }
}
