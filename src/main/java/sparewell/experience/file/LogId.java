package sparewell.experience.file;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.security.SecureRandom;
import java.util.HexFormat;
import java.util.Optional;

/**
 * The random id of a log. It is kept in a small hidden file beside the workbook, {@code
 * .NAME.log-id}, since the angler's sheets are not written into.
 */
public final class LogId {
  private static final int BYTES = 16;

  /** For ids, not for results: nothing else is random. */
  private static final SecureRandom RANDOM = new SecureRandom();

  private LogId() {}

  private static Path place(Path book) {
    return book.toAbsolutePath().resolveSibling("." + book.getFileName() + ".log-id");
  }

  /** The id of a workbook; absent where none was made yet, or what stands there is no id. */
  public static Optional<String> of(Path book) throws IOException {
    try {
      Path file = place(book);
      if (Files.size(file) > 100) {
        return Optional.empty();
      }
      String id = new String(Files.readAllBytes(file), java.nio.charset.StandardCharsets.US_ASCII);
      return Optional.of(id.strip()).filter(text -> text.matches("[0-9a-f]{32}"));
    } catch (NoSuchFileException none) {
      return Optional.empty();
    }
  }

  /**
   * The id of a workbook, made where there is none.
   *
   * @throws FileAlreadyExistsException where a file of that name is not ours
   */
  public static String make(Path book) throws IOException {
    Optional<String> known = of(book);
    if (known.isPresent()) {
      return known.get();
    }
    byte[] random = new byte[BYTES];
    RANDOM.nextBytes(random);
    String id = HexFormat.of().formatHex(random);
    Files.writeString(place(book), id + "\n", StandardOpenOption.CREATE_NEW);
    return id;
  }

  /** Tells states of a workbook apart: the first half of the SHA-256 of its bytes. */
  public static String fingerprint(Path book) throws IOException {
    try {
      MessageDigest digest = MessageDigest.getInstance("SHA-256");
      byte[] buffer = new byte[1 << 16];
      try (java.io.InputStream in = Files.newInputStream(book)) {
        for (int n = in.read(buffer); n >= 0; n = in.read(buffer)) {
          digest.update(buffer, 0, n);
        }
      }
      return HexFormat.of().formatHex(digest.digest(), 0, BYTES);
    } catch (NoSuchAlgorithmException impossible) {
      throw new IllegalStateException(impossible);
    }
  }
}
