package org.climbwatch.source.modbus;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.ByteBuffer;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;

class RegisterFormatTest {
  /**
   * A public tutorial on byte order in Modbus ("Why 32-bit values look wrong",
   * modbus-float32-byte-order): 123.45 is 42F6 E666 with the upper half first, E666 42F6 with the
   * lower half first. The bits agree with IEEE 754.
   */
  @Test
  void aPublishedFloatIsReadInBothWordOrders() {
    byte[] upperFirst = bytes(0x42, 0xF6, 0xE6, 0x66);
    byte[] lowerFirst = bytes(0xE6, 0x66, 0x42, 0xF6);

    assertThat(RegisterFormat.FLOAT32.value(upperFirst, WordOrder.HIGH_FIRST)).isEqualTo(123.45f);
    assertThat(RegisterFormat.FLOAT32.value(lowerFirst, WordOrder.LOW_FIRST)).isEqualTo(123.45f);
  }

  @Test
  void theOtherWordOrderGivesAnotherNumber() {
    double wrong = RegisterFormat.FLOAT32.value(bytes(0x42, 0xF6, 0xE6, 0x66), WordOrder.LOW_FIRST);

    assertThat(Math.abs(wrong)).isGreaterThan(1e6);
  }

  @Test
  void edgesOfTheWholeNumbers() {
    assertThat(read(RegisterFormat.INT16, 0x80, 0x00)).isEqualTo(-32_768);
    assertThat(read(RegisterFormat.INT16, 0x7F, 0xFF)).isEqualTo(32_767);
    assertThat(read(RegisterFormat.INT16, 0xFF, 0xFF)).isEqualTo(-1);
    assertThat(read(RegisterFormat.UINT16, 0x80, 0x00)).isEqualTo(32_768);
    assertThat(read(RegisterFormat.UINT16, 0xFF, 0xFF)).isEqualTo(65_535);
    assertThat(read(RegisterFormat.INT32, 0x80, 0, 0, 0)).isEqualTo(Integer.MIN_VALUE);
    assertThat(read(RegisterFormat.INT32, 0xFF, 0xFF, 0xFF, 0xFE)).isEqualTo(-2);
  }

  @Property
  void everyInt16ComesBack(@ForAll short number) {
    byte[] bytes = ByteBuffer.allocate(2).putShort(number).array();

    assertThat(RegisterFormat.INT16.value(bytes, WordOrder.LOW_FIRST)).isEqualTo(number);
    assertThat(RegisterFormat.UINT16.value(bytes, WordOrder.HIGH_FIRST)).isEqualTo(number & 0xFFFF);
  }

  @Property
  void everyInt32ComesBackInBothWordOrders(@ForAll int number) {
    byte[] bytes = ByteBuffer.allocate(4).putInt(number).array();

    assertThat(RegisterFormat.INT32.value(bytes, WordOrder.HIGH_FIRST)).isEqualTo(number);
    assertThat(RegisterFormat.INT32.value(swapped(bytes), WordOrder.LOW_FIRST)).isEqualTo(number);
  }

  @Property
  void everyFloatComesBackInBothWordOrders(@ForAll float number) {
    byte[] bytes = ByteBuffer.allocate(4).putFloat(number).array();

    assertThat(RegisterFormat.FLOAT32.value(bytes, WordOrder.HIGH_FIRST)).isEqualTo(number);
    assertThat(RegisterFormat.FLOAT32.value(swapped(bytes), WordOrder.LOW_FIRST)).isEqualTo(number);
  }

  @Test
  void aNumberOfTwoRegistersDoesNotFitBehindTheLast() {
    assertThatThrownBy(() -> new Register(65_535, RegisterFormat.INT32, WordOrder.HIGH_FIRST, 1))
        .hasMessageContaining("0 to 65535");
  }

  private static double read(RegisterFormat format, int... bytes) {
    return format.value(bytes(bytes), WordOrder.HIGH_FIRST);
  }

  private static byte[] swapped(byte[] bytes) {
    return new byte[] {bytes[2], bytes[3], bytes[0], bytes[1]};
  }

  private static byte[] bytes(int... numbers) {
    byte[] bytes = new byte[numbers.length];
    for (int i = 0; i < numbers.length; i++) {
      bytes[i] = (byte) numbers[i];
    }
    return bytes;
  }
}
