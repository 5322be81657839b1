package sparewell.ooxml;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.zip.Adler32;
import java.util.zip.CRC32;

/**
 * What a file was at one moment, to tell whether somebody changed it since. Two checksums of
 * different kinds stand for its content: they guard against mishaps, not against forgers, and take
 * no time worth speaking of.
 *
 * @param bytes its size
 * @param crc32 cyclic redundancy check of its content
 * @param adler32 checksum of its content after RFC 1950
 */
public record Fingerprint(long bytes, long crc32, long adler32) {
  /** Reads the file as it is now. */
  public static Fingerprint of(Path file) throws IOException {
    CRC32 crc = new CRC32();
    Adler32 adler = new Adler32();
    long bytes = 0;
    byte[] buffer = new byte[1 << 16];
    try (InputStream in = Files.newInputStream(file)) {
      for (int n = in.read(buffer); n >= 0; n = in.read(buffer)) {
        crc.update(buffer, 0, n);
        adler.update(buffer, 0, n);
        bytes += n;
      }
    }
    return new Fingerprint(bytes, crc.getValue(), adler.getValue());
  }

  /** Of a file with this content. */
  public static Fingerprint of(byte[] content) {
    CRC32 crc = new CRC32();
    Adler32 adler = new Adler32();
    crc.update(content);
    adler.update(content);
    return new Fingerprint(content.length, crc.getValue(), adler.getValue());
  }
}
