package org.climbwatch.app.config;

import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.climbwatch.source.Signal;
import org.climbwatch.source.modbus.ModbusSettings;
import org.climbwatch.source.modbus.ModbusSettings.ColdJunctionFrom;
import org.climbwatch.source.modbus.ModbusSettings.Meaning;
import org.climbwatch.source.modbus.ModbusSettings.Status;
import org.climbwatch.source.modbus.Register;
import org.climbwatch.source.modbus.RegisterFormat;
import org.climbwatch.source.modbus.WordOrder;
import org.climbwatch.source.port.PortSettings;

/** The keys of {@code [probe.modbus]}. */
final class ModbusTable {
  private static final int MOST_ADDRESS = 65_535;
  private static final double MOST_SCALE = 1000;

  /** An answer in doubt is waited for three times as long, and one look may hold several. */
  private static final int SILENCE_TIMEOUTS = 5;

  private final Section probe;
  private final Section table;

  ModbusTable(Section probe, Section table) {
    this.probe = probe;
    this.table = table;
  }

  ModbusSettings read() {
    PortSettings line = new PortKeys(probe, table, "modbus").line();
    int unit = (int) table.whole("unit", 1, 1, 247);
    int function = (int) table.oneOf("function", 4, List.of(3, 4));
    if (!table.has("address")) {
      probe.mistake(
          "modbus",
          "has no address; name the register, counted from 0, for example address = 0 for the one"
              + " that a manual calls 30001 or 40001");
    }
    WordOrder order =
        WordOrder.ofWord(
            table.choice("word_order", WordOrder.HIGH_FIRST.word(), WordOrder.words()));
    Register value = register("", order);
    Meaning meaning = meaning();
    ColdJunctionFrom coldJunction = coldJunction(meaning, order);
    List<Double> faults = table.numbers("fault_values");
    Optional<Status> status = status();
    Duration pause = PortKeys.seconds(table, "poll_s", ModbusSettings.DEFAULT_PAUSE, 0.1, 60);
    Duration timeout =
        PortKeys.seconds(table, "timeout_s", ModbusSettings.DEFAULT_TIMEOUT, 0.1, 10);
    Duration silence = PortKeys.seconds(table, "silence_s", ModbusSettings.DEFAULT_SILENCE, 1, 600);
    if (silence.compareTo(timeout.multipliedBy(SILENCE_TIMEOUTS)) < 0) {
      table.wrong(
          table.has("silence_s") ? "silence_s" : "timeout_s",
          (table.has("silence_s") ? silence : timeout).toMillis() / 1000.0,
          "leaves no time for a second try",
          "make silence_s at least " + SILENCE_TIMEOUTS + " times timeout_s");
    }
    return new ModbusSettings(
        line,
        unit,
        function,
        value,
        meaning,
        coldJunction,
        faults,
        status,
        pause,
        timeout,
        silence);
  }

  private Meaning meaning() {
    List<String> words = List.of("temperature_c", "emf_mv");
    String word = table.choice("gives", words.get(0), words);
    return Meaning.valueOf(word.toUpperCase(Locale.ROOT));
  }

  /** The keys that describe one number, with that in front. */
  private Register register(String prefix, WordOrder order) {
    RegisterFormat format =
        RegisterFormat.ofWord(
            table.choice(prefix + "format", RegisterFormat.INT16.word(), RegisterFormat.words()));
    int address = (int) table.whole(prefix + "address", 0, 0, MOST_ADDRESS);
    if (address + format.registers() - 1 > MOST_ADDRESS) {
      table.wrong(
          prefix + "address",
          address,
          "has no second register behind it",
          "take a lower one, or a format of 16 bits");
      address = 0;
    }
    double scale = table.number(prefix + "scale", 1, -MOST_SCALE, MOST_SCALE);
    if (scale == 0) {
      table.wrong(prefix + "scale", scale, "makes 0 of everything", "write for example 0.1");
      scale = 1;
    }
    return new Register(address, format, order, scale);
  }

  private ColdJunctionFrom coldJunction(Meaning meaning, WordOrder order) {
    Register register = register("cold_junction_", order);
    OptionalDouble fixedC =
        table.optionalNumber(
            "cold_junction_c", Signal.LEAST_COLD_JUNCTION_C, Signal.MOST_COLD_JUNCTION_C);
    boolean read = table.has("cold_junction_address");
    if (read && table.has("cold_junction_c")) {
      table.mistake(
          "cold_junction_c", "contradicts cold_junction_address; take one of the two out");
    }
    if (read) {
      return new ColdJunctionFrom(Optional.of(register), OptionalDouble.empty());
    }
    if (meaning == Meaning.EMF_MV && !table.has("cold_junction_c")) {
      table.mistake(
          "gives",
          "= \"emf_mv\" needs the temperature of the terminals; add cold_junction_address, or"
              + " cold_junction_c where it is kept the same");
    }
    boolean needed = meaning == Meaning.EMF_MV && fixedC.isEmpty();
    return new ColdJunctionFrom(Optional.empty(), needed ? OptionalDouble.of(0) : fixedC);
  }

  private Optional<Status> status() {
    int address = (int) table.whole("status_address", 0, 0, MOST_ADDRESS);
    int bits = (int) table.whole("open_circuit_bits", 1, 1, 65_535);
    if (table.has("open_circuit_bits") && !table.has("status_address")) {
      table.mistake("open_circuit_bits", "are of no register; add status_address");
    }
    return table.has("status_address") ? Optional.of(new Status(address, bits)) : Optional.empty();
  }
}
