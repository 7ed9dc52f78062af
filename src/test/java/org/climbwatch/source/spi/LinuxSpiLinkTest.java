package org.climbwatch.source.spi;

import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is looked at before Pi4J is asked; the bus itself needs a Pi. */
class LinuxSpiLinkTest {
  @TempDir Path folder;

  @Test
  void aBusThatIsOffIsToldWithWhatTurnsItOn() {
    assertThatThrownBy(() -> LinuxSpiLink.requireUsable(folder.resolve("spidev0.0"), "aarch64"))
        .isInstanceOf(IOException.class)
        .hasMessageContaining("spidev0.0 is not there")
        .hasMessageContaining("dtparam=spi=on");
  }

  @Test
  void a32BitJavaIsRefusedBecauseItWouldTalkNonsenseToTheKernel() throws IOException {
    Path device = Files.createFile(folder.resolve("spidev0.0"));

    assertThatThrownBy(() -> LinuxSpiLink.requireUsable(device, "arm"))
        .isInstanceOf(IOException.class)
        .hasMessageContaining("needs a 64-bit system");
  }

  @Test
  void aDeviceThatIsThereAndMayBeUsedPasses() throws IOException {
    Path device = Files.createFile(folder.resolve("spidev0.0"));

    assertThatCode(() -> LinuxSpiLink.requireUsable(device, "aarch64")).doesNotThrowAnyException();
    assertThatCode(() -> LinuxSpiLink.requireUsable(device, "amd64")).doesNotThrowAnyException();
  }
}
