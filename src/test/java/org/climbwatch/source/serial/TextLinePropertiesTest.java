package org.climbwatch.source.serial;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.climbwatch.source.Signal;

/** What holds for every line, whatever happens to it on the way. */
class TextLinePropertiesTest {
  @Property
  void whatAnAmplifierSendsArrives(
      @ForAll @IntRange(min = -1_000_000, max = 1_000_000) int tenthsOfUv,
      @ForAll @IntRange(min = -5500, max = 12_500) int hundredthsOfC) {
    double emfUv = tenthsOfUv / 10.0;
    double coldJunctionC = hundredthsOfC / 100.0;

    TextLine.Decoded decoded = decode(AmplifierEmulator.line(emfUv, coldJunctionC));

    assertThat(decoded)
        .isEqualTo(new TextLine.Accepted(new Signal.Emf(emfUv / 1000, coldJunctionC)));
  }

  @Property(tries = 20_000)
  void noBytesMakeItThrow(@ForAll @Size(max = 120) byte[] bytes) {
    assertThat(TextLine.decode(bytes)).isNotNull();
  }

  @Property(tries = 20_000)
  void noCheckedTextMakesItThrow(@ForAll("fieldLike") String fields) {
    assertThat(decode(AmplifierEmulator.line(fields))).isNotNull();
  }

  /** Every place, every other byte: nothing short of that would show the one that slips through. */
  @Property(tries = 40)
  void aLineWithOneByteChangedIsNeverTaken(@ForAll("lines") String line) {
    byte[] sent = line.getBytes(StandardCharsets.US_ASCII);
    for (int place = 0; place < sent.length; place++) {
      for (int other = 0; other < 256; other++) {
        if ((byte) other != sent[place]) {
          byte[] arrived = sent.clone();
          arrived[place] = (byte) other;
          assertNothingTaken(arrived, "byte " + place + " of " + line + " as " + other);
        }
      }
    }
  }

  @Property(tries = 200)
  void aLineWithAnyRunOfBytesLostIsNeverTaken(@ForAll("lines") String line) {
    byte[] sent = line.getBytes(StandardCharsets.US_ASCII);
    for (int from = 0; from < sent.length - 1; from++) {
      // the line end itself stays, or it would be no line yet
      for (int to = from + 1; to < sent.length; to++) {
        byte[] arrived = Arrays.copyOf(sent, from + sent.length - to);
        System.arraycopy(sent, to, arrived, from, sent.length - to);
        assertNothingTaken(arrived, "bytes " + from + " to " + to + " of " + line + " lost");
      }
    }
  }

  /** However the bytes are cut into reads, the same lines come out. */
  @Property
  void howReadsAreCutChangesNothing(
      @ForAll("streams") byte[] stream, @ForAll @IntRange(min = 1, max = 50) int cut) {
    List<Signal> whole = taken(stream);
    List<Signal> pieces = new ArrayList<>();
    LineAssembler assembler = new LineAssembler(collecting(pieces));
    for (int from = 0; from < stream.length; from += cut) {
      byte[] piece = Arrays.copyOfRange(stream, from, Math.min(stream.length, from + cut));
      assembler.take(piece, piece.length);
    }

    assertThat(pieces).isEqualTo(whole);
  }

  @Property
  void afterAnyGarbageTheLineAfterNextLineEndIsRead(
      @ForAll @Size(max = 500) byte[] garbage, @ForAll("lines") String line) {
    ByteArrayOutputStream stream = new ByteArrayOutputStream();
    stream.writeBytes(garbage);
    stream.write('\n');
    stream.writeBytes(line.getBytes(StandardCharsets.US_ASCII));

    assertThat(taken(stream.toByteArray())).hasSize(1);
  }

  private static void assertNothingTaken(byte[] arrived, String what) {
    if (!taken(arrived).isEmpty()) {
      throw new AssertionError(what + ": was taken as " + taken(arrived));
    }
  }

  /** What a stream yields, cut into lines and read, the way that the port does it. */
  private static List<Signal> taken(byte[] stream) {
    List<Signal> signals = new ArrayList<>();
    new LineAssembler(collecting(signals)).take(stream, stream.length);
    return signals;
  }

  private static LineAssembler.Lines collecting(List<Signal> signals) {
    return new LineAssembler.Lines() {
      @Override
      public void line(byte[] line, boolean first) {
        if (TextLine.decode(line) instanceof TextLine.Accepted accepted) {
          signals.add(accepted.signal());
        }
      }

      @Override
      public void tooLong() {
        // counted by the reader; here nothing is taken, which is the point
      }
    };
  }

  private static TextLine.Decoded decode(String line) {
    return TextLine.decode(line.stripTrailing().getBytes(StandardCharsets.US_ASCII));
  }

  @Provide
  Arbitrary<String> lines() {
    Arbitrary<Integer> emf = Arbitraries.integers().between(-1_000_000, 1_000_000);
    Arbitrary<Integer> cold = Arbitraries.integers().between(-5500, 12_500);
    Arbitrary<Integer> hot = Arbitraries.integers().between(-2700, 18_200);
    Arbitrary<String> raw =
        Combinators.combine(emf, cold).as((e, c) -> AmplifierEmulator.line(e / 10.0, c / 100.0));
    Arbitrary<String> linearised =
        hot.map(t -> AmplifierEmulator.line(String.format(Locale.ROOT, "temp_c=%.1f", t / 10.0)));
    Arbitrary<String> faults =
        Arbitraries.of("open", "short_ground", "short_supply", "range")
            .map(word -> AmplifierEmulator.line("fault=" + word));
    return Arbitraries.oneOf(raw, linearised, faults);
  }

  @Provide
  Arbitrary<String> fieldLike() {
    return Arbitraries.of("emf_uv", "cj_c", "temp_c", "fault", "=", " ", "1", "-", ".", "9", "open")
        .list()
        .ofMaxSize(12)
        .map(parts -> String.join("", parts));
  }

  @Provide
  Arbitrary<byte[]> streams() {
    Arbitrary<String> garbage =
        Arbitraries.strings().withCharRange('\0', '\u00FF').ofMaxLength(120);
    return Arbitraries.oneOf(lines(), garbage)
        .list()
        .ofMaxSize(10)
        .map(parts -> String.join("", parts).getBytes(StandardCharsets.ISO_8859_1));
  }
}
