package org.climbwatch.source.port;

import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SharedPortsTest {
  @TempDir Path folder;

  private final SharedPorts ports = new SharedPorts();

  @Test
  void twoWhoWantOnePortDifferentlyAreTold() {
    SharedPorts.Place first = ports.join(at(9600, Parity.NONE), new Idle());

    assertThatThrownBy(() -> ports.join(at(19_200, Parity.EVEN), new Idle()))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("9600 baud 8N1")
        .hasMessageContaining("19200 baud 8E1");
    first.close();
  }

  @Test
  void aPortThatAllHaveLeftIsFreeForOtherSettings() {
    ports.join(at(9600, Parity.NONE), new Idle()).close();

    assertThatCode(() -> ports.join(at(19_200, Parity.EVEN), new Idle()).close())
        .doesNotThrowAnyException();
  }

  private PortSettings at(int baud, Parity parity) {
    return new PortSettings(folder.resolve("missing").toString(), baud, parity, 1, true);
  }

  private static final class Idle implements Talker {
    @Override
    public void opened() {}

    @Override
    public void gone(String reason) {}

    @Override
    public Left turn(Wire wire) {
      return Left.NOTHING;
    }

    @Override
    public void answerPending(Talker whose) {}

    @Override
    public Duration pause() {
      return Duration.ofSeconds(1);
    }
  }
}
