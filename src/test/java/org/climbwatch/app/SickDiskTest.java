package org.climbwatch.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.RandomAccessFile;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicReference;
import org.climbwatch.alarm.Shelving;
import org.climbwatch.alarm.Signature;
import org.climbwatch.app.config.Configuration;
import org.climbwatch.firing.Phase;
import org.climbwatch.journal.Journal;
import org.climbwatch.journal.JournalTrouble;
import org.climbwatch.reading.Moment;
import org.climbwatch.watch.Event;
import org.climbwatch.watch.Input;
import org.climbwatch.watch.Outcome;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** What the potter does while the disk hangs or is locked, and a stop at such a time. */
@Timeout(60)
class SickDiskTest {
  private static final Signature ANN = new Signature("Ann", "");

  @TempDir Path folder;
  private Path file;
  private Engine engine;
  private final CountDownLatch released = new CountDownLatch(1);
  private final CountDownLatch inside = new CountDownLatch(1);
  private volatile boolean hangs;

  @BeforeEach
  void start() {
    file = folder.resolve("journal.sqlite");
    KilnTime looked = new KilnTime(1, this::wallMillis);
    MachineWatch machine =
        new MachineWatch(folder, Optional.of(new ClockWatch(looked, new TimeService(folder))));
    Configuration configuration =
        Configuration.ofText("kiln.toml", "[[probe]]\nsource = \"model\"\n");
    Journal journal = Journal.open(file, new TextCodec());
    engine = new Engine(configuration, new KilnTime(1000), journal, machine);
  }

  @AfterEach
  void stop() {
    released.countDown();
    engine.close();
  }

  private long wallMillis() {
    if (hangs) {
      inside.countDown();
      try {
        released.await();
      } catch (InterruptedException interrupted) {
        Thread.currentThread().interrupt();
      }
    }
    return System.currentTimeMillis();
  }

  /**
   * The record of the page is a pipe that nobody writes to: who opens it hangs as on a dead disk.
   */
  @Test
  void aNoteThatHangsInTheRecordKeepsNoAnswerWaiting() throws Exception {
    Path pipe = folder.resolve("frozen.sqlite");
    assertThat(new ProcessBuilder("mkfifo", pipe.toString()).start().waitFor()).isZero();
    try (Desk desk = new Desk(engine, pipe)) {
      AtomicReference<Throwable> end = new AtomicReference<>();
      List<Thread> hanging = new ArrayList<>();
      hanging.add(new Thread(() -> desk.note(7, "damper in")));
      hanging.add(new Thread(() -> desk.declare(7, Phase.HOLDING)));
      hanging.add(new Thread(() -> desk.end(7)));
      for (Thread one : hanging) {
        one.setUncaughtExceptionHandler((thread, thrown) -> end.set(thrown));
        one.start();
        while (!opensTheRecord(one)) {
          Thread.onSpinWait();
        }
      }

      desk.shelve("over_temperature", new Shelving(Duration.ofMinutes(1), ANN));

      assertThat(engine.view().alarms()).hasSize(1);
      assertThat(hanging).allMatch(Thread::isAlive);
      assertThat(end.get()).isNull();
      letGo(pipe, hanging);
    }
  }

  private static boolean opensTheRecord(Thread thread) {
    for (StackTraceElement at : thread.getStackTrace()) {
      if (at.getClassName().endsWith("NativeDB") && at.getMethodName().startsWith("_open")) {
        return true;
      }
    }
    return false;
  }

  /** Once somebody has both ends of the pipe open, to open it waits for nobody. */
  private static void letGo(Path pipe, List<Thread> hanging) throws Exception {
    RandomAccessFile bothEnds = new RandomAccessFile(pipe.toFile(), "rw");
    for (Thread one : hanging) {
      one.join();
    }
    bothEnds.close();
  }

  /** It was taken, and neither the page nor the log ever heard of it. */
  @Test
  void whatIsDeclaredWhileTheDiskIsInTroubleIsToldAtOnce() throws Exception {
    List<String> heard = new ArrayList<>();
    engine.listen(
        new EngineListener() {
          @Override
          public void measured(Outcome outcome, OptionalLong firingId) {}

          @Override
          public void deed(Input input, Outcome outcome, OptionalLong firingId) {
            outcome.events().stream().map(Event::message).forEach(heard::add);
          }
        });
    engine.deed(at -> new Input.Began(at, "stoneware"));
    heard.clear();
    try (Connection other = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement lock = other.createStatement()) {
      lock.execute("BEGIN IMMEDIATE");

      assertThatThrownBy(() -> engine.deed(at -> new Input.Declared(at, Phase.HOLDING)))
          .isInstanceOf(JournalTrouble.class);

      lock.execute("ROLLBACK");
    }
    assertThat(engine.view().phase()).isEqualTo(Phase.HOLDING);
    assertThat(heard).hasSize(1);
  }

  /** What has expired would be announced and written, to a journal that is closed. */
  @Test
  void aSamplerThatHungAtTheStopEndsWithoutAWord() throws Exception {
    Shelving minute = new Shelving(Duration.ofMinutes(1), ANN);
    engine.deed(at -> new Input.Shelved(at, "over_temperature", minute));
    Moment over = engine.now().plusMillis(60_000);
    while (engine.now().millisSince(over) < 0) {
      Thread.onSpinWait();
    }
    hangs = true;
    engine.start();
    assertThat(inside.await(20, TimeUnit.SECONDS)).isTrue();
    Thread sampler =
        Thread.getAllStackTraces().keySet().stream()
            .filter(thread -> thread.getName().equals("sampler"))
            .findFirst()
            .orElseThrow();
    CompletableFuture<Throwable> failed = new CompletableFuture<>();
    sampler.setUncaughtExceptionHandler((thread, bug) -> failed.complete(bug));

    engine.close();
    released.countDown();
    sampler.join();

    assertThat(failed).isNotDone();
  }
}
