package sparewell.save;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeFalse;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.file.AccessDeniedException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import sparewell.Command;
import sparewell.ooxml.Fingerprint;
import sparewell.ooxml.WorkbookPackage;
import sparewell.ooxml.WorkbookRefused;
import sparewell.ooxml.Zips;
import sparewell.save.append.AppendRequest;
import sparewell.save.file.Refusals;
import sparewell.save.file.Replacement;

/** Saves that must not happen: the message says why, and the workbook is as it was. */
class RefusedSavesTest {
  @TempDir private Path folder;
  private Path book;

  @BeforeEach
  void make() throws Exception {
    folder = folder.toRealPath();
    book = Files.write(folder.resolve("season.xlsx"), Zips.ordinary("Stock", "Trips"));
  }

  private void refused(Path target, String... because) throws Exception {
    byte[] before = Files.readAllBytes(book);
    List<String> beside = Command.names(folder);
    WorkbookRefused refused =
        assertThrows(WorkbookRefused.class, () -> Saving.save(book, target, Saving.NOW));
    for (String part : because) {
      boolean out = part.equals("--out") && refused.elsewhere();
      assertTrue(out || refused.getMessage().contains(part), refused.getMessage());
    }
    assertFalse(refused.getMessage().contains("Exception"), refused.getMessage());
    assertArrayEquals(before, Files.readAllBytes(book));
    assertEquals(beside, Command.names(folder));
  }

  private void edit(String part, String from, String to) throws IOException {
    Map<String, byte[]> parts = Zips.read(Files.readAllBytes(book));
    Zips.edit(parts, part, from, to);
    Files.write(book, Zips.write(parts));
  }

  @ParameterizedTest
  @ValueSource(strings = {"~$season.xlsx", ".~lock.season.xlsx#"})
  void openInASpreadsheetProgram(String lock) throws Exception {
    Files.write(folder.resolve(lock), new byte[] {1});
    refused(book, "has it open", "Close it", "--out", "delete " + lock);
    Path out = folder.resolve("other.xlsx");
    Saving.save(book, out, Saving.NOW);
    assertTrue(Files.exists(out), "--out still works");
  }

  @Test
  void lockedByTheSystem() throws Exception {
    try (FileChannel channel = FileChannel.open(book, StandardOpenOption.WRITE);
        FileLock lock = channel.lock()) {
      assertTrue(lock.isValid());
      refused(book, "another program holds it locked", "--out");
    }
    Saving.into(book);
  }

  @Test
  void lockedByAnotherProcess() throws Exception {
    assumeTrue(Programs.hasPythonModule("fcntl"), "no Python here to hold a lock");
    Path ready = folder.resolve("ready");
    String script =
        "import fcntl,sys,time\nf=open(sys.argv[1],'r+b')\nfcntl.lockf(f,fcntl.LOCK_EX)\n"
            + "open(sys.argv[2],'w').close()\ntime.sleep(60)";
    Process holder =
        new ProcessBuilder(Programs.PYTHON, "-c", script, book.toString(), ready.toString())
            .start();
    try {
      for (int i = 0; i < 600 && !Files.exists(ready); i++) {
        TimeUnit.MILLISECONDS.sleep(50);
      }
      assertTrue(Files.exists(ready), "the lock is held");
      refused(book, "another program holds it locked");
    } finally {
      holder.destroyForcibly();
      holder.waitFor();
    }
  }

  @Test
  void anotherRunIsWriting() throws Exception {
    new Replacement(book, Fingerprint.of(book), book, Saving.NOW, 1)
        .replaceBy(
            fresh -> {
              assertDoesNotThrow(() -> refused(book, "another run of this program"));
              Files.copy(book, fresh);
            });
    Saving.into(book);
  }

  @Test
  void structureProtected() throws Exception {
    edit("xl/workbook.xml", "<bookViews>", "<workbookProtection lockStructure=\"1\"/><bookViews>");
    refused(book, "structure is protected", "Take the protection");
    refused(folder.resolve("other.xlsx"), "structure is protected");
    try (WorkbookPackage read = WorkbookPackage.open(book)) {
      AppendRequest rows =
          new AppendRequest(read, List.of(), i -> false, written -> true, Saving.NOW, 10);
      assertThrows(WorkbookRefused.class, () -> WorkbookSaver.append(rows));
      Path copy = folder.resolve("copy.xlsx");
      assertThrows(WorkbookRefused.class, () -> WorkbookSaver.copyWithRows(rows, copy));
      assertEquals(List.of("season.xlsx"), Command.names(folder));
    }
  }

  @Test
  void digitallySigned() throws Exception {
    edit(
        "_rels/.rels",
        "</Relationships>",
        "<Relationship Id=\"rIdS\" Target=\"_xmlsignatures/origin.sigs\" Type=\"http://schemas."
            + "openxmlformats.org/package/2006/relationships/digital-signature/origin\"/>"
            + "</Relationships>");
    refused(book, "digitally signed", "Remove the signature", "--drop-signature");
  }

  @Test
  void sharedWorkbook() throws Exception {
    edit(
        "xl/_rels/workbook.xml.rels",
        "</Relationships>",
        "<Relationship Id=\"rIdS\" Target=\"revisions/revisionHeaders.xml\" Type=\"http://schemas."
            + "openxmlformats.org/officeDocument/2006/relationships/revisionHeaders\"/>"
            + "</Relationships>");
    refused(book, "shared workbook", "Stop sharing");
  }

  @Test
  void outWithTheWrongEnding() throws Exception {
    refused(folder.resolve("other.csv"), "must end in .xlsx");
    refused(folder.resolve("other.xlsm"), "without macros must end in .xlsx");
    Path macros = Files.write(folder.resolve("m.xlsm"), Workbooks.bytes("xlsxwriter.xlsm"));
    WorkbookRefused refused =
        assertThrows(
            WorkbookRefused.class,
            () -> Saving.save(macros, folder.resolve("other.xlsx"), Saving.NOW));
    assertTrue(refused.problem().contains("with macros must end in .xlsm"), refused.getMessage());
  }

  @Test
  void outInNoFolderOrOnAFolder() throws Exception {
    refused(folder.resolve("nowhere/other.xlsx"), "not there");
    Files.createDirectory(folder.resolve("place.xlsx"));
    refused(folder.resolve("place.xlsx"), "folder");
  }

  @Test
  void changedOrGoneSinceItWasRead() throws Exception {
    byte[] other = Zips.ordinary("Stock", "Trips", "Boxes");
    try (WorkbookPackage read = WorkbookPackage.open(book)) {
      Files.write(book, other);
      WorkbookRefused refused =
          assertThrows(WorkbookRefused.class, () -> Saving.save(read, book, Saving.NOW));
      assertTrue(refused.problem().contains("changed"), refused.getMessage());
      assertArrayEquals(other, Files.readAllBytes(book));
      Files.delete(book);
      refused = assertThrows(WorkbookRefused.class, () -> Saving.save(read, book, Saving.NOW));
      assertTrue(refused.problem().contains("deleted"), refused.getMessage());
      assertEquals(List.of(), Command.names(folder));
    }
  }

  @Test
  void nameTooLongWithItsTemporaryLetters() throws Exception {
    assumeFalse(System.getProperty("os.name").startsWith("Windows"), "limits differ there");
    Path name = folder.resolve("s".repeat(248) + ".xlsx");
    refused(name, "too long", "shorter names");
  }

  @Test
  void readOnlyFileOrFolder() throws Exception {
    assumeTrue(Files.getFileStore(folder).supportsFileAttributeView("posix"), "no such rights");
    Files.setPosixFilePermissions(book, PosixFilePermissions.fromString("r--r--r--"));
    assumeFalse(Files.isWritable(book), "the administrator may write everywhere");
    refused(book, "read-only");
    Files.setPosixFilePermissions(book, PosixFilePermissions.fromString("rw-r--r--"));
    Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("r-xr-xr-x"));
    try {
      refused(book, "no permission");
    } finally {
      Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("rwxr-xr-x"));
    }
  }

  @Test
  void diskFull() throws Exception {
    Path disk = Files.createDirectory(folder.resolve("disk"));
    List<String> mount =
        List.of("mount", "-t", "tmpfs", "-o", "size=48k", "tmpfs", disk.toString());
    assumeTrue(
        Programs.has("mount") && Programs.run(folder, 1, TimeUnit.MINUTES, mount) == 0,
        "only the administrator may make a small disk");
    try {
      Path there = Files.copy(book, disk.resolve("season.xlsx"));
      int room = 48 * 1024 / 4096 - 6; // leaves less than the new workbook needs
      for (int i = 0; i < room; i++) {
        Files.write(disk.resolve("photo" + i), new byte[4096]);
      }
      byte[] before = Files.readAllBytes(there);
      WorkbookRefused refused = assertThrows(WorkbookRefused.class, () -> Saving.into(there));
      assertTrue(refused.getMessage().contains("disk is full"), refused.getMessage());
      assertArrayEquals(before, Files.readAllBytes(there));
      try (Stream<Path> all = Files.list(disk)) {
        assertTrue(all.noneMatch(p -> p.getFileName().toString().endsWith(".tmp")));
      }
    } finally {
      Programs.run(folder, 1, TimeUnit.MINUTES, List.of("umount", disk.toString()));
    }
  }

  @Test
  void whatTheDiskSaysInPlainWords() {
    says(new FileSystemException("x", null, "No space left on device"), "the disk is full");
    says(new IOException("No space left on device"), "the disk is full");
    says(new FileSystemException("x", null, "Disk quota exceeded"), "the disk is full");
    says(new FileSystemException("x", null, "File name too long"), "too long");
    says(new FileSystemException("x", null, "Read-only file system"), "the disk is read-only");
    says(new AccessDeniedException("x"), "no permission");
    says(new NoSuchFileException("x"), "vanished");
    says(new AtomicMoveNotSupportedException("x", "y", "z"), "in one step");
    says(
        new FileSystemException("x", null, "file is being used by another process"),
        "another program has it open");
    says(new IOException("Input/output error"), "could not be written");
  }

  private static void says(IOException e, String words) {
    String message = Refusals.of(Path.of("season.xlsx"), e).getMessage();
    assertTrue(message.contains(words), message);
    assertTrue(message.endsWith("The workbook is as it was."), message);
  }
}
