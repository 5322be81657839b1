package sparewell.ooxml;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/**
 * What a file was at one moment, to tell whether somebody changed it since.
 *
 * @param bytes its size
 * @param sha256 digest of its content, hexadecimal
 */
public record Fingerprint(long bytes, String sha256) {
  /** Reads the file as it is now. */
  public static Fingerprint of(Path file) throws IOException {
    MessageDigest digest = digest();
    long bytes = 0;
    byte[] buffer = new byte[1 << 16];
    try (InputStream in = Files.newInputStream(file)) {
      for (int n = in.read(buffer); n >= 0; n = in.read(buffer)) {
        digest.update(buffer, 0, n);
        bytes += n;
      }
    }
    return new Fingerprint(bytes, HexFormat.of().formatHex(digest.digest()));
  }

  static Fingerprint of(byte[] content) {
    return new Fingerprint(content.length, HexFormat.of().formatHex(digest().digest(content)));
  }

  private static MessageDigest digest() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }
}
