package sparewell.ooxml;

import java.io.Closeable;
import java.io.IOException;
import java.io.InputStream;
import java.nio.channels.SeekableByteChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.zip.CRC32;
import java.util.zip.CheckedInputStream;
import java.util.zip.ZipEntry;
import org.apache.commons.compress.archivers.zip.ZipArchiveEntry;
import org.apache.commons.compress.archivers.zip.ZipArchiveOutputStream;
import org.apache.commons.compress.archivers.zip.ZipFile;

/** The zip container: entries with unique names, bounded sizes and verified checksums. */
final class ZipParts implements Closeable {
  /** Most unpacked bytes; a million formatted blank rows have 188 MB. */
  static final long MOST_BYTES = 640L << 20;

  /** Most that may be unpacked from one packed byte, once an entry is large. */
  static final int MOST_RATIO = 200;

  private static final long LARGE = 32L << 20;
  private static final int MOST_ENTRIES = 10_000;

  private final Path file;
  private final ZipFile zip;
  private final List<ZipArchiveEntry> entries;
  private final Map<String, ZipArchiveEntry> byKey = new LinkedHashMap<>();

  private ZipParts(Path file, ZipFile zip) {
    this.file = file;
    this.zip = zip;
    this.entries = Collections.list(zip.getEntries());
  }

  /** Opens and checks everything; closes the channel if it refuses. */
  static ZipParts open(Path file, SeekableByteChannel channel) throws WorkbookRefused, IOException {
    ZipFile zip;
    try {
      zip = ZipFile.builder().setSeekableByteChannel(channel).get();
    } catch (IOException | RuntimeException e) {
      channel.close();
      throw WorkbookRefused.of(file, "cut short");
    }
    ZipParts parts = new ZipParts(file, zip);
    try {
      parts.checkNames();
      parts.checkPlaces();
      parts.checkContents();
      return parts;
    } catch (WorkbookRefused | RuntimeException e) {
      zip.close();
      throw e;
    }
  }

  private void checkNames() throws WorkbookRefused {
    if (entries.size() > MOST_ENTRIES) {
      throw hostile("it holds " + entries.size() + " parts, far more than a workbook has");
    }
    for (ZipArchiveEntry entry : entries) {
      String name = entry.getName();
      if (PartNames.isTrick(name) || entry.isUnixSymlink()) {
        throw hostile("the name of a part inside leads out of the file");
      }
      if (entry.getGeneralPurposeBit().usesEncryption()) {
        throw WorkbookRefused.of(file, "locked part");
      }
      if (entry.getMethod() != ZipEntry.STORED && entry.getMethod() != ZipEntry.DEFLATED) {
        throw hostile("a part inside is packed in a way that workbooks do not use");
      }
      if (byKey.put(PartNames.key(name), entry) != null) {
        throw hostile("it holds the part " + name + " twice, so it is not clear which one counts");
      }
    }
  }

  /** Refuses entries that share bytes, by which a small file unpacks into a huge one. */
  private void checkPlaces() throws WorkbookRefused {
    long free = 0;
    List<ZipArchiveEntry> placed = new ArrayList<>(entries);
    placed.sort(Comparator.comparingLong(ZipArchiveEntry::getDataOffset));
    for (ZipArchiveEntry entry : placed) {
      if (entry.getDataOffset() < free || entry.getCompressedSize() < 0) {
        throw hostile("parts inside overlap");
      }
      free = entry.getDataOffset() + entry.getCompressedSize();
    }
  }

  private void checkContents() throws WorkbookRefused {
    long total = 0;
    byte[] buffer = new byte[1 << 16];
    for (ZipArchiveEntry entry : entries) {
      long size = 0;
      try (InputStream in = stream(entry)) {
        for (int n = in.read(buffer); n >= 0; n = in.read(buffer)) {
          size += n;
          if (size > most(entry)) {
            throw new TooLarge("a part inside unpacks to far more than its packed size allows");
          }
          if (total + size > MOST_BYTES) {
            throw new TooLarge("it unpacks to more than " + (MOST_BYTES >> 20) + " MB");
          }
        }
        total += size;
        if (size != entry.getSize()) {
          throw new IOException("cut short");
        }
      } catch (TooLarge e) {
        throw hostile(e.getMessage());
      } catch (IOException | RuntimeException e) {
        throw WorkbookRefused.of(file, "damaged", entry.getName());
      }
    }
  }

  private static long most(ZipArchiveEntry entry) {
    return Math.max(LARGE, entry.getCompressedSize() * MOST_RATIO);
  }

  private WorkbookRefused hostile(String problem) {
    return WorkbookRefused.of(file, "hostile", problem);
  }

  List<String> names() {
    return entries.stream().map(ZipArchiveEntry::getName).toList();
  }

  /** The entry that holds a part, as it is named. */
  Optional<String> find(String part) {
    return Optional.ofNullable(byKey.get(PartNames.key(part))).map(ZipArchiveEntry::getName);
  }

  /** A part's bytes as they are unpacked; reading fails where they do not match their checksum. */
  InputStream stream(String part) throws IOException {
    ZipArchiveEntry entry = byKey.get(PartNames.key(part));
    if (entry == null) {
      throw new IOException("no part " + part);
    }
    return stream(entry);
  }

  private InputStream stream(ZipArchiveEntry entry) throws IOException {
    CRC32 checksum = new CRC32();
    return new CheckedInputStream(zip.getInputStream(entry), checksum) {
      @Override
      public int read(byte[] buffer, int offset, int length) throws IOException {
        int n = super.read(buffer, offset, length);
        if (n < 0 && checksum.getValue() != entry.getCrc()) {
          throw new IOException("checksum differs");
        }
        return n;
      }
    };
  }

  /** Whole text of a tiny part; empty where it is missing or unreadable. */
  String textOf(String part) {
    try (InputStream in = stream(part)) {
      return new String(in.readNBytes(1000), StandardCharsets.ISO_8859_1);
    } catch (IOException e) {
      return "";
    }
  }

  boolean holds(String part, long checksum, long size) {
    ZipArchiveEntry entry = byKey.get(PartNames.key(part));
    return entry != null && entry.getCrc() == checksum && entry.getSize() == size;
  }

  boolean sameEntry(String entryName, ZipParts other) throws IOException {
    ZipArchiveEntry here = byKey.get(PartNames.key(entryName));
    ZipArchiveEntry there = other.byKey.get(PartNames.key(entryName));
    if (there == null
        || !here.getName().equals(there.getName())
        || here.getMethod() != there.getMethod()
        || here.getCompressedSize() != there.getCompressedSize()) {
      return false;
    }
    byte[] a = new byte[1 << 13];
    byte[] b = new byte[1 << 13];
    try (InputStream first = zip.getRawInputStream(here);
        InputStream second = other.zip.getRawInputStream(there)) {
      int n;
      do {
        n = first.readNBytes(a, 0, a.length);
        if (n != second.readNBytes(b, 0, b.length) || !Arrays.equals(a, 0, n, b, 0, n)) {
          return false;
        }
      } while (n > 0);
    }
    return true;
  }

  void copyRaw(String entryName, ZipArchiveOutputStream to) throws IOException {
    ZipArchiveEntry entry = byKey.get(PartNames.key(entryName));
    try (InputStream raw = zip.getRawInputStream(entry)) {
      to.addRawArchiveEntry(entry, raw);
    }
  }

  @Override
  public void close() throws IOException {
    zip.close();
  }

  static final class TooLarge extends IOException {
    TooLarge(String message) {
      super(message);
    }
  }
}
