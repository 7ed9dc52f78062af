package org.climbwatch.journal;

import static org.climbwatch.journal.Fixture.at;

import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import org.climbwatch.alarm.AlarmState;
import org.climbwatch.watch.Input;

/**
 * Writes to a journal until it is killed, and says on its standard output what it has handed over
 * and what it was told is durable.
 */
final class KilledWriter {
  private final Journal journal;
  private final int boot;
  private final String run;
  private final PrintStream out = new PrintStream(System.out, false, StandardCharsets.UTF_8);
  private final long startNanos = System.nanoTime();

  private KilledWriter(Journal journal, String run) {
    this.journal = journal;
    this.run = run;
    this.boot = journal.boot(run, 0, Fixture.WALL_MS);
  }

  /** Arguments: the file, a name for the run, a seed, how many readings there are to a deed. */
  public static void main(String[] arguments) throws InterruptedException {
    try (Journal journal = Journal.open(Path.of(arguments[0]), Fixture.CODEC)) {
      new KilledWriter(journal, arguments[1])
          .write(new Random(Long.parseLong(arguments[2])), Integer.parseInt(arguments[3]));
    }
  }

  private void write(Random dice, int readingsToADeed) throws InterruptedException {
    say("boot " + boot);
    for (int number = 0; ; number++) {
      look(number);
      if (dice.nextInt(readingsToADeed) == 0) {
        deed(number);
      }
      if (dice.nextInt(readingsToADeed) == 0) {
        alarm(number);
      }
      journal.commitIfDue(nowMs());
      Thread.sleep(2);
    }
  }

  private void look(int number) {
    say("reading " + nowMs());
    journal.append(Fixture.good(at(boot, nowMs()), number));
  }

  private void deed(int number) {
    String text = run + "/" + number;
    journal.record(new Input.Noted(at(boot, nowMs()), text), List.of());
    say("note " + text);
  }

  private void alarm(int number) {
    String id = run + "/" + number;
    journal.announce(
        Fixture.good(at(boot, nowMs()), number),
        Fixture.alarm(at(boot, nowMs()), id, AlarmState.UNACKNOWLEDGED));
    if (journal.trouble().isEmpty()) {
      say("alarm " + id);
    }
  }

  private void say(String line) {
    out.println(line);
    out.flush();
  }

  private long nowMs() {
    return (System.nanoTime() - startNanos) / 1_000_000;
  }
}
