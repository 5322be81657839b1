package sparewell.experience.file;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.security.SecureRandom;
import java.util.HexFormat;
import java.util.Optional;

/** Random id of a log, in a hidden file beside the workbook: {@code .NAME.log-id}. */
public final class LogId {
  private static final int BYTES = 16;

  /** Source of ids; results use seeded randomness. */
  private static final SecureRandom RANDOM = new SecureRandom();

  private LogId() {}

  private static Path place(Path book) {
    return book.toAbsolutePath().resolveSibling("." + book.getFileName() + ".log-id");
  }

  /** Id of a workbook; absent where the file is missing or holds no id. */
  public static Optional<String> of(Path book) throws IOException {
    try {
      Path file = place(book);
      if (Files.size(file) > 100) {
        return Optional.empty();
      }
      String id = new String(Files.readAllBytes(file), StandardCharsets.US_ASCII);
      return Optional.of(id.strip()).filter(text -> text.matches("[0-9a-f]{32}"));
    } catch (NoSuchFileException none) {
      return Optional.empty();
    }
  }

  /**
   * Id of a workbook, created where there is none.
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

  /** Fingerprint of a workbook: the first 16 bytes of its SHA-256, in hexadecimal. */
  public static String fingerprint(Path book) throws IOException {
    try {
      MessageDigest digest = MessageDigest.getInstance("SHA-256");
      try (var in = new DigestInputStream(Files.newInputStream(book), digest)) {
        in.transferTo(OutputStream.nullOutputStream());
      }
      return HexFormat.of().formatHex(digest.digest(), 0, BYTES);
    } catch (NoSuchAlgorithmException impossible) {
      throw new IllegalStateException(impossible);
    }
  }
}
