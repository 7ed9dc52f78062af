package org.climbwatch.export;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;

/**
 * How long 24 h at ten readings a second take as CSV, in a fresh process with the first compiler
 * tier, file written, as {@code export} does it.
 *
 * <p>{@code mvn -Pjmh test-compile exec:java -Dexec.args="FiringCsv -rf json -rff target/jmh.json"}
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(java.util.concurrent.TimeUnit.MILLISECONDS)
@Fork(value = 5, jvmArgsAppend = "-XX:TieredStopAtLevel=1")
public class FiringCsvBenchmark {
  private static final int ROWS = 864_000;
  private Path file;

  @Setup
  public void make() throws IOException {
    file = Files.createTempFile("firing", ".csv");
  }

  @TearDown
  public void remove() throws IOException {
    Files.delete(file);
  }

  @Benchmark
  public long day() throws IOException {
    return write(file);
  }

  /** Writes the rows; gives the file's size. */
  static long write(Path file) throws IOException {
    try (OutputStream out = Files.newOutputStream(file)) {
      FiringCsv csv = new FiringCsv(out);
      csv.header();
      for (int i = 0; i < ROWS; i++) {
        csv.reading(
            1_795_600_000_000L + i * 100L,
            i * 100L,
            "upper",
            20_000 + i * 13 / 10,
            300 + (i >> 10),
            600 + i % 331,
            100 + i / 2,
            21_000 + i % 4000,
            "good",
            "climbing",
            10,
            i % 100,
            FiringCsv.NONE);
      }
      csv.flush();
    }
    return Files.size(file);
  }
}
