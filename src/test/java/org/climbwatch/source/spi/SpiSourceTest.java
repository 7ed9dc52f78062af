package org.climbwatch.source.spi;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.ArrayDeque;
import java.util.Deque;
import org.climbwatch.reading.Fault;
import org.climbwatch.reading.Moment;
import org.climbwatch.reading.Reading;
import org.climbwatch.thermocouple.ThermocoupleType;
import org.junit.jupiter.api.Test;

/** The source on a bus that plays a script, since no SPI bus runs here. */
class SpiSourceTest {
  private final Deque<Object> script = new ArrayDeque<>();
  private int open;
  private final SpiSource source =
      new SpiSource("upper", ThermocoupleType.K, "scripted", this::opened);

  @Test
  void frameBecomesASignal() {
    script.add("open");
    script.add(new byte[] {0x06, 0x4C, 0x19, 0x00});

    assertThat(source.read(new Moment(0, 0)).orElseThrow()).isInstanceOf(Reading.Emf.class);
    source.close();
    assertThat(open).isZero();
  }

  @Test
  void missingDeviceIsGoneAndTriedAgainAfterFiveSeconds() {
    script.add(new IOException("/dev/spidev0.0 is not there"));
    script.add("open");
    script.add(new byte[] {0x06, 0x4C, 0x19, 0x00});

    assertThat(fault(0)).isEqualTo(Fault.DEVICE_GONE);
    assertThat(fault(4000)).isEqualTo(Fault.DEVICE_GONE);
    assertThat(source.describe()).contains("is not there");
    assertThat(source.read(new Moment(0, 5000)).orElseThrow()).isInstanceOf(Reading.Emf.class);
  }

  @Test
  void failedTransferIsNoAnswerAndClosesTheDeviceOnce() {
    script.add("open");
    script.add(new IOException("carried -1 of 4 bytes"));

    assertThat(fault(0)).isEqualTo(Fault.NO_ANSWER);
    source.close();
    assertThat(open).isZero();
  }

  private Fault fault(long millis) {
    return ((Reading.Faulty) source.read(new Moment(0, millis)).orElseThrow()).fault();
  }

  private SpiLink opened() throws IOException {
    Object next = script.remove();
    if (next instanceof IOException refused) {
      throw refused;
    }
    open++;
    return new SpiLink() {
      @Override
      public void transfer(byte[] bytes) throws IOException {
        Object answer = script.remove();
        if (answer instanceof IOException failed) {
          throw failed;
        }
        System.arraycopy((byte[]) answer, 0, bytes, 0, bytes.length);
      }

      @Override
      public void close() {
        open--;
      }
    };
  }
}
