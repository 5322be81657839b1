package sparewell.ooxml;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import javax.xml.stream.XMLStreamException;
import org.junit.jupiter.api.parallel.Isolated;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Parts that are no UTF-8. Alone, for it listens to what is printed. */
@Isolated
class BrokenTextTest {
  /** The JDK's own decoding prints to the terminal before it throws. */
  @ParameterizedTest
  @ValueSource(ints = {20, 1019, 70_000})
  void brokenTextIsRefusedWithoutAWordOnTheTerminal(int at) {
    ByteArrayOutputStream part = new ByteArrayOutputStream();
    part.writeBytes(Zips.utf8("<a>" + "x".repeat(at)));
    part.writeBytes(new byte[] {(byte) 0xc3, (byte) 0x28}); // a lead byte without its follower
    part.writeBytes(Zips.utf8("</a>"));
    PrintStream usual = System.err;
    ByteArrayOutputStream printed = new ByteArrayOutputStream();
    System.setErr(new PrintStream(printed, true, StandardCharsets.UTF_8));
    try {
      assertThrows(
          XMLStreamException.class,
          () -> SafeXml.checkWellFormed(new ByteArrayInputStream(part.toByteArray())));
    } finally {
      System.setErr(usual);
    }
    assertEquals("", printed.toString(StandardCharsets.UTF_8));
  }
}
