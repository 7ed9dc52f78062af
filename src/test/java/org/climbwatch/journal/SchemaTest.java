package org.climbwatch.journal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.climbwatch.journal.Fixture.at;
import static org.climbwatch.journal.Fixture.good;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.climbwatch.reading.Fault;
import org.climbwatch.reading.Reading;
import org.climbwatch.watch.Input;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SchemaTest {
  @TempDir Path folder;
  private Path file;

  @BeforeEach
  void nameTheFile() {
    file = folder.resolve("climbwatch.db");
  }

  private void journalWithOneReading() {
    try (Journal journal = Journal.open(file, Fixture.CODEC)) {
      journal.boot("boot-a", 0, Fixture.WALL_MS);
      journal.append(good(at(0, 1000), 20));
    }
  }

  private void execute(String sql) throws SQLException {
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement statement = connection.createStatement()) {
      statement.executeUpdate(sql);
    }
  }

  private long number(String sql) throws SQLException {
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file)) {
      return One.number(connection, sql).orElseThrow();
    }
  }

  @Test
  void aNewFileIsMarkedAsOurs() throws SQLException {
    journalWithOneReading();

    assertThat(number("PRAGMA application_id")).isEqualTo(Schema.APPLICATION_ID);
    assertThat(number("PRAGMA user_version")).isEqualTo(Schema.STEPS.size());
  }

  @Test
  void aNewerFileIsRefusedByWriterAndReader() throws SQLException {
    journalWithOneReading();
    execute("PRAGMA user_version = " + (Schema.STEPS.size() + 1));

    assertThatThrownBy(() -> Journal.open(file, Fixture.CODEC))
        .isInstanceOf(JournalTrouble.class)
        .hasMessage(
            "the journal %s has version %d, this program knows up to %d; install the newer"
                + " program that wrote it, or name another --data folder",
            file, Schema.STEPS.size() + 1, Schema.STEPS.size());
    assertThatThrownBy(() -> Firings.open(file))
        .isInstanceOf(JournalTrouble.class)
        .hasMessageContaining("has version " + (Schema.STEPS.size() + 1));
  }

  @Test
  void afterARefusalTheLockIsFreeAgain() throws SQLException {
    journalWithOneReading();
    execute("PRAGMA user_version = 99");
    assertThatThrownBy(() -> Journal.open(file, Fixture.CODEC)).isInstanceOf(JournalTrouble.class);

    execute("PRAGMA user_version = " + Schema.STEPS.size());

    Journal.open(file, Fixture.CODEC).close();
  }

  @Test
  void anotherProgramsFileIsRefusedAndNotTouched() throws Exception {
    execute("CREATE TABLE glaze (recipe TEXT)");
    byte[] before = Files.readAllBytes(file);

    assertThatThrownBy(() -> Journal.open(file, Fixture.CODEC))
        .isInstanceOf(JournalTrouble.class)
        .hasMessage(
            file
                + " is a SQLite file of another program, not a journal; name another --data"
                + " folder");

    assertThat(Files.readAllBytes(file)).isEqualTo(before);
  }

  @Test
  void aFileThatIsNoDatabaseIsRefusedAndNotTouched() throws Exception {
    Files.writeString(file, "kiln log of the old days\n".repeat(300));
    byte[] before = Files.readAllBytes(file);

    assertThatThrownBy(() -> Journal.open(file, Fixture.CODEC))
        .isInstanceOf(JournalTrouble.class)
        .hasMessageStartingWith("cannot open the journal " + file + ": it is no SQLite file;")
        .hasMessageContaining("move it aside");

    assertThat(Files.readAllBytes(file)).isEqualTo(before);
  }

  @Test
  void aDamagedFileIsRefused() throws Exception {
    journalWithOneReading();
    byte[] bytes = Files.readAllBytes(file);
    for (int i = 100; i < 4096; i++) {
      bytes[i] = (byte) 0xA5;
    }
    Files.write(file, bytes);

    assertThatThrownBy(() -> Journal.open(file, Fixture.CODEC))
        .isInstanceOf(JournalTrouble.class)
        .hasMessageStartingWith("cannot open the journal " + file + ": it is damaged; move it");
  }

  @Test
  void aReaderSaysWhenThereIsNoJournal() {
    assertThatThrownBy(() -> Firings.open(file))
        .isInstanceOf(JournalTrouble.class)
        .hasMessage(
            "there is no journal " + file + "; name the --data folder that the daemon writes to");
    assertThat(file).doesNotExist();
  }

  @Test
  void anOlderFileIsBroughtUpToDateWithAllThatIsInIt() throws SQLException {
    journalWithOneReading();
    List<String> steps = new ArrayList<>(Schema.STEPS);
    steps.add("ALTER TABLE firing ADD COLUMN fuel_g INTEGER; ALTER TABLE deed ADD COLUMN x TEXT;");

    try (Journal journal = Journal.open(file, Fixture.CODEC, steps)) {
      List<Input> replayed = new ArrayList<>();
      journal.replay(replayed::add);
      assertThat(replayed).containsExactly(new Input.Measured(good(at(0, 1000), 20).reading()));
    }

    assertThat(number("PRAGMA user_version")).isEqualTo(steps.size());
    assertThat(number("SELECT count(fuel_g) FROM firing")).isZero();
  }

  /** As the program wrote it that knew a single look in each reading. */
  @Test
  void readingsOfAVersionWithoutSpreadsAreSingleLooks() throws SQLException {
    for (String step : Schema.STEPS.subList(0, 2)) {
      execute(step);
    }
    execute("PRAGMA application_id = " + Schema.APPLICATION_ID);
    execute("PRAGMA user_version = 2");
    execute("INSERT INTO boot VALUES (0, 'boot-a', 0, 1)");
    execute("INSERT INTO probe VALUES (1, 'upper')");
    execute(
        "INSERT INTO reading VALUES (1, 0, 1000, 1, 0, 400000, NULL, 25000, 985123, 300, NULL,"
            + " NULL, NULL, 0, 2), (2, 0, 2000, 1, 1, NULL, 985000, NULL, 985000, 300, NULL, NULL,"
            + " NULL, 0, 2), (3, 0, 3000, 1, 2, NULL, NULL, NULL, NULL, NULL, NULL, NULL, 1, 0, 2)");

    List<Input> replayed = new ArrayList<>();
    try (Journal journal = Journal.open(file, Fixture.CODEC)) {
      journal.replay(replayed::add);
      journal.append(Fixture.judged(Reading.emf(at(0, 4000), "upper", 40.1, 25, 10, 0.0104)));
      journal.commit();
      assertThat(number("PRAGMA user_version")).isEqualTo(Schema.STEPS.size());
    }

    assertThat(replayed)
        .containsExactly(
            new Input.Measured(Reading.emf(at(0, 1000), "upper", 40, 25)),
            new Input.Measured(
                Reading.linearised(at(0, 2000), "upper", 985, OptionalDouble.empty())),
            new Input.Measured(Reading.faulty(at(0, 3000), "upper", Fault.OPEN_CIRCUIT)));
    assertThat(number("SELECT count(*) FROM reading WHERE samples IS NULL")).isEqualTo(3);
    assertThat(number("SELECT samples * 1000 + spread FROM reading WHERE ms = 4000"))
        .isEqualTo(10_104);
  }

  @Test
  void aStepThatFailsLeavesTheFileAsItWas() throws SQLException {
    journalWithOneReading();
    List<String> steps = new ArrayList<>(Schema.STEPS);
    steps.add("ALTER TABLE firing ADD COLUMN fuel_g INTEGER");
    steps.add("ALTER TABLE no_such_table ADD COLUMN x TEXT");

    assertThatThrownBy(() -> Journal.open(file, Fixture.CODEC, steps))
        .isInstanceOf(JournalTrouble.class);

    assertThat(number("PRAGMA user_version")).isEqualTo(Schema.STEPS.size());
    assertThat(number("SELECT count(*) FROM pragma_table_info('firing') WHERE name = 'fuel_g'"))
        .isZero();
  }

  @Test
  void aReaderOfAnEmptyFileSaysThatTheDaemonMustRunOnce() throws Exception {
    Files.createFile(file);

    assertThatThrownBy(() -> Firings.open(file))
        .isInstanceOf(JournalTrouble.class)
        .hasMessageContaining("start the daemon once");
  }

  @Test
  void aSecondDaemonIsRefusedAndToldWhichOneHasTheJournal() {
    try (Journal journal = Journal.open(file, Fixture.CODEC)) {
      assertThat(journal.trouble()).isEmpty();
      assertThatThrownBy(() -> Journal.open(file, Fixture.CODEC))
          .isInstanceOf(JournalTrouble.class)
          .hasMessage(
              "the journal %s is in use by another climbwatch (process %d); stop that one first,"
                  + " or name another --data folder",
              file, ProcessHandle.current().pid());
    }
  }
}
