package sparewell.workbook.importing;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.HexFormat;
import sparewell.workbook.read.UnusableInput;

/** Reads text files of various encodings. */
final class FileText {
  private static final long MOST_BYTES = 64L << 20;

  private FileText() {}

  /** Reads UTF-8 or UTF-16 by its byte order mark, else UTF-8 where it fits, else windows-1252. */
  static String read(Path file) throws UnusableInput {
    byte[] bytes = bytes(file);
    String first = HexFormat.of().formatHex(bytes, 0, Math.min(3, bytes.length));
    if (first.equals("efbbbf")) {
      return checked(file, new String(bytes, 3, bytes.length - 3, StandardCharsets.UTF_8));
    }
    if (first.startsWith("fffe")) {
      return checked(file, new String(bytes, 2, bytes.length - 2, StandardCharsets.UTF_16LE));
    }
    if (first.startsWith("feff")) {
      return checked(file, new String(bytes, 2, bytes.length - 2, StandardCharsets.UTF_16BE));
    }
    if (first.startsWith("504b")) { // a zip archive
      throw new UnusableInput(
          file + " is a workbook or an archive, no CSV file. Save its sheet as CSV first.");
    }
    try {
      return checked(
          file, StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString());
    } catch (CharacterCodingException notUnicode) {
      return checked(file, new String(bytes, Charset.forName("windows-1252")));
    }
  }

  private static String checked(Path file, String text) throws UnusableInput {
    if (text.indexOf('\0') >= 0) {
      throw new UnusableInput(file + " is not a CSV file. Save the table as CSV (UTF-8) first.");
    }
    if (text.isBlank()) {
      throw new UnusableInput(file + " is empty.");
    }
    return text;
  }

  private static byte[] bytes(Path file) throws UnusableInput {
    try {
      if (Files.isDirectory(file)) {
        throw new UnusableInput(file + " is a folder. Name the CSV file in it.");
      }
      if (Files.size(file) > MOST_BYTES) {
        throw new UnusableInput(file + " is larger than 64 MB. Split it.");
      }
      return Files.readAllBytes(file);
    } catch (NoSuchFileException missing) {
      throw new UnusableInput(file + ": there is no such file. Check its name and folder.");
    } catch (AccessDeniedException denied) {
      throw new UnusableInput(file + ": you have no permission to read it.");
    } catch (IOException disk) {
      throw new UnusableInput(file + " could not be read from the disk.");
    }
  }
}
