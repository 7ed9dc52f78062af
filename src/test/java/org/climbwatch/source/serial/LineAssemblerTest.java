package org.climbwatch.source.serial;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class LineAssemblerTest {
  private final List<String> cut = new ArrayList<>();
  private final LineAssembler assembler =
      new LineAssembler(
          new LineAssembler.Lines() {
            @Override
            public void line(byte[] line, boolean first) {
              String text = new String(line, StandardCharsets.ISO_8859_1);
              cut.add((first ? "first " : "") + text);
            }

            @Override
            public void tooLong() {
              cut.add("too long");
            }
          });

  @Test
  void cutsAtLineFeedsAndMarksTheFirst() {
    take("tail\nwhole\r\nhalf");

    assertThat(cut).containsExactly("first tail", "whole\r");
  }

  @Test
  void joinsWhatCameInPieces() {
    take("x\nwh");
    take("");
    take("ole\n");

    assertThat(cut).containsExactly("first x", "whole");
  }

  @Test
  void blankLinesAreNoLines() {
    take("x\n\n\r\n\n");

    assertThat(cut).containsExactly("first x");
  }

  @Test
  void anOverlongLineIsToldOnceAndDroppedAndTheNextIsRead() {
    take("x\n" + "y".repeat(100_000) + "\nnext\n");

    assertThat(cut).containsExactly("first x", "too long", "next");
  }

  @Test
  void theLongestLineWithItsCarriageReturnIsKept() {
    String longest = "y".repeat(TextLine.LONGEST);

    take("x\n" + longest + "\r\n");

    assertThat(cut).containsExactly("first x", longest + "\r");
  }

  private void take(String text) {
    byte[] bytes = text.getBytes(StandardCharsets.ISO_8859_1);
    assembler.take(bytes, bytes.length);
  }
}
