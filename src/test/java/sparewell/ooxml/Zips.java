package sparewell.ooxml;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;
import org.apache.poi.ss.usermodel.Workbook;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/** Zip files taken apart and put together, for tests that damage them. */
public final class Zips {
  private Zips() {}

  /** Entries in order. */
  public static Map<String, byte[]> read(byte[] zip) {
    Map<String, byte[]> parts = new LinkedHashMap<>();
    try (ZipInputStream in = new ZipInputStream(new ByteArrayInputStream(zip))) {
      for (ZipEntry e = in.getNextEntry(); e != null; e = in.getNextEntry()) {
        parts.put(e.getName(), in.readAllBytes());
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return parts;
  }

  /** A zip of these entries. */
  public static byte[] write(Map<String, byte[]> parts) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (ZipOutputStream out = new ZipOutputStream(bytes)) {
      for (Map.Entry<String, byte[]> part : parts.entrySet()) {
        out.putNextEntry(new ZipEntry(part.getKey()));
        out.write(part.getValue());
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return bytes.toByteArray();
  }

  /** Text as part bytes. */
  public static byte[] utf8(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  /** A part as text. */
  public static String text(Map<String, byte[]> parts, String name) {
    return new String(parts.get(name), StandardCharsets.UTF_8);
  }

  /** Replaces text in a part; fails where it is not there. */
  public static void edit(Map<String, byte[]> parts, String name, String from, String to) {
    String text = text(parts, name);
    if (!text.contains(from)) {
      throw new IllegalArgumentException(name + " has no " + from + ": " + text);
    }
    parts.put(name, utf8(text.replace(from, to)));
  }

  /** An ordinary workbook of a few sheets, made by POI. */
  public static byte[] ordinary(String... sheets) {
    try (Workbook book = new XSSFWorkbook();
        ByteArrayOutputStream out = new ByteArrayOutputStream()) {
      for (String sheet : sheets) {
        book.createSheet(sheet).createRow(0).createCell(0).setCellValue("in " + sheet);
      }
      book.write(out);
      return out.toByteArray();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
