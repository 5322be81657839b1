package sparewell.experience.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sparewell.experience.Entry;
import sparewell.experience.Key;
import sparewell.experience.Kind;
import sparewell.experience.Unit;

class ExperienceFileTest {
  private static final String HEADER = String.join(",", ExperienceFile.COLUMNS) + "\r\n";
  private static final String ID = "0123456789abcdef0123456789abcdef";
  private static final String GOOD =
      ID + "," + ID + ",2026,style,pieces_per_hour_thrown,Football jig,Jigs,-1.5,0.4,12,30.5,2\r\n";

  @TempDir private Path folder;

  private ExperienceFile.Reading read(String text)
      throws IOException, ExperienceFile.NotExperience {
    return ExperienceFile.read(Files.writeString(folder.resolve("e.csv"), text));
  }

  @Test
  void whatIsWrittenIsReadBack() throws Exception {
    Entry entry =
        new Entry(
            ID,
            ID,
            2026,
            new Key(Kind.STYLE, Unit.PIECES_PER_HOUR_THROWN, "=sum a1"),
            "=Sum, \"A1\"",
            "-Jigs",
            "jigs",
            -1.25,
            0.4,
            12,
            30.5,
            2);
    String text = ExperienceFile.text(List.of(entry));
    assertTrue(text.startsWith(HEADER), text);
    assertTrue(text.contains("\"'=Sum, \"\"A1\"\"\",'-Jigs"), text);
    assertEquals(List.of(entry), read(text).rows());
  }

  @Test
  void filesMergeByTheirRowsOneAfterTheOther() throws Exception {
    ExperienceFile.Reading both = read("\ufeff" + HEADER + GOOD + HEADER + "\r\n" + GOOD);
    assertEquals(2, both.rows().size());
    assertEquals(0, both.leftOut());
  }

  @ParameterizedTest
  @CsvSource(
      useHeadersInDisplayName = true,
      delimiter = '|',
      textBlock =
          """
          column      | nonsense | why
          log_id      | x        | log_id must be 32
          fingerprint | ABC      | fingerprint must be 32
          last_year   | 1066     | last_year must be a whole number from 1950
          kind        | lure     | kind must be
          unit        | times    | does not go with kind
          unit        | pieces   | unit must be
          name        | ''       | name is blank
          ln_estimate | NaN      | ln_estimate must be a number from -9 to 4
          ln_estimate | 99       | ln_estimate must be
          ln_estimate | 1e3      | ln_estimate must be
          ln_variance | 0        | ln_variance must be
          ln_variance | -1       | ln_variance must be
          trips       | 0        | trips must be
          hours       | 1e9      | hours must be a number from 0 to 1000000
          pieces      | -2       | pieces must be""")
  void nonsenseIsLeftOutWithItsLine(String column, String nonsense, String why) throws Exception {
    String[] cells = GOOD.strip().split(",");
    cells[ExperienceFile.COLUMNS.indexOf(column)] = nonsense;
    ExperienceFile.Reading reading = read(HEADER + GOOD + String.join(",", cells) + "\r\n" + GOOD);
    assertEquals(2, reading.rows().size());
    assertEquals(1, reading.leftOut());
    assertEquals(3, reading.faults().get(0).line());
    assertTrue(reading.faults().get(0).why().contains(why), reading.faults().get(0).why());
  }

  @Test
  void longNamesAndShortLinesAreLeftOut() throws Exception {
    String many = GOOD.replace("Football jig", "x".repeat(81));
    assertEquals(2, read(HEADER + many + "a,b\r\n").leftOut());
  }

  @Test
  void otherFilesAreRefused() {
    for (String text : List.of("", "a,b\r\n1,2\r\n", GOOD, HEADER + "\"never closed")) {
      Exception refused = assertThrows(ExperienceFile.NotExperience.class, () -> read(text), text);
      assertTrue(refused.getMessage().contains("e.csv"), refused.getMessage());
    }
  }

  @Test
  void aLogKeepsItsIdBesideTheWorkbook() throws Exception {
    Path book = Files.writeString(folder.resolve("my log.xlsx"), "book");
    assertTrue(LogId.of(book).isEmpty());
    String id = LogId.make(book);
    assertEquals(id, LogId.make(book));
    assertTrue(Files.exists(folder.resolve(".my log.xlsx.log-id")));
    Path other = Files.writeString(folder.resolve("other.xlsx"), "book");
    assertFalse(id.equals(LogId.make(other)));
    assertEquals(LogId.fingerprint(book), LogId.fingerprint(other));
  }
}
