package sparewell.ooxml;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.zip.Adler32;
import java.util.zip.CRC32;
import java.util.zip.CheckedInputStream;

/**
 * State of a file at one moment, to notice later changes. Two checksums of different kinds stand
 * for the content: they detect accidents, not forgery.
 *
 * @param crc32 cyclic redundancy check of its content
 * @param adler32 checksum of its content after RFC 1950
 */
public record Fingerprint(long bytes, long crc32, long adler32) {
  public static Fingerprint of(Path file) throws IOException {
    try (InputStream in = Files.newInputStream(file)) {
      return of(in);
    }
  }

  public static Fingerprint of(byte[] content) {
    try {
      return of(new ByteArrayInputStream(content));
    } catch (IOException impossible) {
      throw new UncheckedIOException(impossible);
    }
  }

  private static Fingerprint of(InputStream in) throws IOException {
    CRC32 crc = new CRC32();
    Adler32 adler = new Adler32();
    InputStream checked = new CheckedInputStream(new CheckedInputStream(in, crc), adler);
    long bytes = checked.transferTo(OutputStream.nullOutputStream());
    return new Fingerprint(bytes, crc.getValue(), adler.getValue());
  }
}
