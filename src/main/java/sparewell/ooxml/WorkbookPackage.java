package sparewell.ooxml;

import java.io.Closeable;
import java.io.IOException;
import java.io.InputStream;
import java.net.URLDecoder;
import java.nio.channels.SeekableByteChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Predicate;
import javax.xml.stream.XMLStreamException;
import org.apache.commons.compress.archivers.zip.ZipArchiveOutputStream;
import org.apache.commons.compress.utils.SeekableInMemoryByteChannel;

/**
 * An opened .xlsx or .xlsm, accepted by content whatever its name. Opening checks names, sizes and
 * checksums of all parts; nothing is ever unpacked to disk and nothing outside the file is
 * followed.
 */
public final class WorkbookPackage implements Closeable {
  private static final int STRETCH_BYTES = 1 << 18;
  private static final long IN_MEMORY = 64L << 20;
  private static final long MOST_FILE_BYTES = 512L << 20;
  private static final int MOST_PART_BYTES = 16 << 20;
  private static final int MOST_SHEET_BYTES = 256 << 20;

  private final Path file;
  private final Fingerprint fingerprint;
  private final ZipParts zip;
  private final ContentTypes contentTypes;
  private final WorkbookPart workbook;
  private final boolean signed;
  private final Map<String, XmlText> parsed = new ConcurrentHashMap<>();

  private WorkbookPackage(Path file, Fingerprint fingerprint, ZipParts zip) throws WorkbookRefused {
    this.file = file;
    this.fingerprint = fingerprint;
    this.zip = zip;
    if (zip.find(ContentTypes.PART).isEmpty()) {
      throw FileKind.otherZip(file, zip);
    }
    try {
      contentTypes = ContentTypes.of(xml(ContentTypes.PART));
      List<Relationship> top = relationships("");
      String main =
          top.stream()
              .filter(r -> r.is("officeDocument") && !r.external())
              .map(Relationship::part)
              .filter(p -> zip.find(p).isPresent())
              .findFirst()
              .orElseThrow(() -> FileKind.otherZip(file, zip));
      signed = top.stream().anyMatch(r -> r.type().endsWith("/digital-signature/origin"));
      requireWorkbook(contentTypes.of(main).orElse(""));
      workbook = WorkbookPart.read(this, main);
    } catch (IOException | XMLStreamException e) {
      throw damaged(ContentTypes.PART);
    }
  }

  /** Opens a workbook; where it is refused nothing stays open. */
  public static WorkbookPackage open(Path file) throws WorkbookRefused {
    try {
      if (Files.isDirectory(file)) {
        throw WorkbookRefused.of(file, "folder");
      }
      FileKind.requireZip(file);
      long size = Files.size(file);
      if (size > MOST_FILE_BYTES) {
        throw WorkbookRefused.of(file, "large file");
      }
      Fingerprint fingerprint;
      SeekableByteChannel channel;
      if (size <= IN_MEMORY) { // a snapshot: what is read cannot change while we work
        byte[] content = Files.readAllBytes(file);
        fingerprint = Fingerprint.of(content);
        channel = new SeekableInMemoryByteChannel(content);
      } else {
        fingerprint = Fingerprint.of(file);
        channel = Files.newByteChannel(file);
      }
      ZipParts zip = ZipParts.open(file, channel);
      try {
        return new WorkbookPackage(file, fingerprint, zip);
      } catch (WorkbookRefused | RuntimeException e) {
        zip.close();
        throw e;
      }
    } catch (NoSuchFileException e) {
      throw WorkbookRefused.of(file, "missing");
    } catch (AccessDeniedException e) {
      throw WorkbookRefused.of(file, "forbidden");
    } catch (IOException e) {
      throw WorkbookRefused.of(file, "unreadable");
    }
  }

  private void requireWorkbook(String contentType) throws WorkbookRefused {
    boolean accepted =
        contentType.equals(
                "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml")
            || contentType.equals("application/vnd.ms-excel.sheet.macroEnabled.main+xml");
    if (accepted) {
      return;
    }
    if (contentType.contains("template") || contentType.contains("addin")) {
      throw WorkbookRefused.of(file, "template");
    }
    throw FileKind.otherZip(file, zip);
  }

  public WorkbookRefused damaged(String part) {
    return WorkbookRefused.of(file, "damaged", part);
  }

  public Path file() {
    return file;
  }

  /** Fingerprint of the file when it was opened. */
  public Fingerprint fingerprint() {
    return fingerprint;
  }

  public List<SheetEntry> sheets() {
    return workbook.sheets();
  }

  public boolean date1904() {
    return workbook.date1904();
  }

  public String workbookPart() {
    return workbook.name();
  }

  /** The part of a kind that the workbook refers to, such as {@code styles}. */
  public Optional<String> related(String kind) {
    return workbook.related(kind);
  }

  /** Returns whether sheets may not be added or removed. */
  public boolean structureProtected() {
    return workbook.structureProtected();
  }

  /** Returns whether it carries a digital signature, which any change breaks. */
  public boolean signed() {
    return signed;
  }

  public boolean macros() {
    return contentTypes.of(workbookPart()).orElse("").contains("macroEnabled");
  }

  public List<String> entryNames() {
    return zip.names();
  }

  public boolean has(String part) {
    return zip.find(part).isPresent();
  }

  /** The name of a part as the container spells it. */
  public Optional<String> entryName(String part) {
    return zip.find(part);
  }

  public Optional<String> contentType(String part) {
    return contentTypes.of(part);
  }

  /**
   * A part's bytes. Reading throws an IOException where they do not match their checksum or are far
   * more than the packed size allows.
   */
  public InputStream part(String partName) throws IOException {
    return zip.stream(partName);
  }

  /**
   * Looks for something in a part's text, one character a byte and without the zero bytes of
   * UTF-16.
   *
   * @param shared characters that each stretch of the text has in common with the one before
   * @param found true ends the search
   */
  public boolean anyStretch(String part, int shared, Predicate<String> found) throws IOException {
    byte[] buffer = new byte[STRETCH_BYTES];
    String rest = "";
    try (InputStream in = part(part)) {
      for (int n = in.readNBytes(buffer, 0, buffer.length); n > 0; ) {
        String read = new String(buffer, 0, n, StandardCharsets.ISO_8859_1);
        String text = rest + read.replace("\0", "");
        if (found.test(text)) {
          return true;
        }
        rest = text.substring(Math.max(0, text.length() - shared));
        n = in.readNBytes(buffer, 0, buffer.length);
      }
    }
    return false;
  }

  /** A small part as editable text, parsed once. */
  public XmlText xml(String part) throws WorkbookRefused {
    XmlText known = parsed.get(PartNames.key(part));
    if (known != null) {
      return known;
    }
    try {
      XmlText xml = XmlText.parse(bytes(part, MOST_PART_BYTES));
      parsed.put(PartNames.key(part), xml);
      return xml;
    } catch (IOException | XMLStreamException e) {
      throw damaged(part);
    }
  }

  /** A worksheet's part as editable text, its rows apart from the rest. */
  public SheetText sheetText(String part) throws WorkbookRefused {
    try {
      return SheetText.parse(bytes(part, MOST_SHEET_BYTES));
    } catch (IOException | XMLStreamException e) {
      throw damaged(part);
    }
  }

  private byte[] bytes(String part, int most) throws IOException, WorkbookRefused {
    try (InputStream in = part(part)) {
      byte[] bytes = in.readNBytes(most + 1);
      if (bytes.length > most) {
        throw WorkbookRefused.of(file, "large part", part);
      }
      return bytes;
    }
  }

  /** The relationships of a part; the package's own for an empty name. */
  public List<Relationship> relationships(String part) throws WorkbookRefused {
    String relationshipsPart = PartNames.relationshipsOf(part);
    if (!has(relationshipsPart)) {
      return List.of();
    }
    List<Relationship> found = new ArrayList<>();
    for (XmlElement e : xml(relationshipsPart).root().children("Relationship")) {
      String target = e.value("Target").orElse("");
      boolean external = e.value("TargetMode").filter("External"::equalsIgnoreCase).isPresent();
      String to = external ? "" : located(PartNames.resolve(part, target));
      found.add(new Relationship(e.value("Id").orElse(""), e.value("Type").orElse(""), to));
    }
    return List.copyOf(found);
  }

  /** Targets are URIs: a blank in an entry's name may stand as %20 in the target. */
  private String located(String part) {
    if (has(part) || part.indexOf('%') < 0) {
      return zip.find(part).orElse(part);
    }
    try {
      String plain = URLDecoder.decode(part.replace("+", "%2B"), StandardCharsets.UTF_8);
      return zip.find(plain).orElse(part);
    } catch (IllegalArgumentException e) {
      return part;
    }
  }

  /** Compares an entry with that of the same name in another package, by their packed bytes. */
  public boolean sameEntry(String entryName, WorkbookPackage other) throws IOException {
    return zip.sameEntry(entryName, other.zip);
  }

  /** Compares a part's CRC-32 and unpacked size in bytes, which were verified on opening. */
  public boolean holds(String part, long checksum, long size) {
    return zip.holds(part, checksum, size);
  }

  public void copyRaw(String entryName, ZipArchiveOutputStream to) throws IOException {
    zip.copyRaw(entryName, to);
  }

  @Override
  public void close() {
    try {
      zip.close();
    } catch (IOException e) {
      // Only read: nothing of it can be lost by a failed close.
    }
  }
}
