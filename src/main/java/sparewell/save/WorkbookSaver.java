package sparewell.save;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import javax.xml.stream.XMLStreamException;
import sparewell.ooxml.Fingerprint;
import sparewell.ooxml.PartNames;
import sparewell.ooxml.WorkbookPackage;
import sparewell.ooxml.WorkbookRefused;

/**
 * Writes our sheets into a workbook. The new file is written beside the old one, read back and
 * compared; the old one is backed up; then the new one takes its place in one step. Whatever
 * happens on the way, the old or the new file stands there, whole.
 */
public final class WorkbookSaver {
  private WorkbookSaver() {}

  /**
   * Refuses early what {@link #save} would refuse: a protected, signed or shared workbook, a name
   * of the wrong kind, a file open elsewhere.
   *
   * @param dropSignature whether a signed one is accepted
   */
  public static void check(WorkbookPackage original, Path target, boolean dropSignature)
      throws WorkbookRefused {
    Path file = original.file();
    if (original.structureProtected()) {
      throw Refusals.refused(
          file,
          "its structure is protected, so that no sheet may be added",
          "Take the protection of the workbook off (Review, Protect workbook) and run again.");
    }
    if (original.signed() && !dropSignature) {
      throw Refusals.refused(
          file,
          "it is digitally signed, and any change would break the signature",
          "Remove the signature, or run analyse with --drop-signature to have it removed.");
    }
    if (original.shared()) {
      throw Refusals.refused(
          file,
          "it is a 'shared workbook' with a log of changes",
          "Stop sharing it (Review, Unshare workbook) and run again.");
    }
    String wanted = original.macros() ? ".xlsm" : ".xlsx";
    String name = target.getFileName() == null ? "" : target.getFileName().toString();
    if (!FileNames.extension(name).toLowerCase(Locale.ROOT).equals(wanted)
        && !isSame(file, target)) {
      throw Refusals.refused(
          target,
          "a workbook "
              + (original.macros() ? "with" : "without")
              + " macros must end in "
              + wanted,
          "Give --out a name that does.");
    }
    try {
      OpenElsewhere.check(place(target));
    } catch (IOException e) {
      throw Refusals.of(target, e);
    }
  }

  /**
   * Saves.
   *
   * @throws WorkbookRefused where it cannot be done; the target is as it was
   */
  public static SaveResult save(SaveRequest request) throws WorkbookRefused {
    check(request.original(), request.target(), request.dropSignature());
    try (WorkbookPackage scratch = WorkbookPackage.open(request.scratch())) {
      Path target = place(request.target());
      try (RunLock lock = RunLock.take(target)) {
        lock.removeLeftovers();
        return replace(
            request,
            target,
            fresh -> {
              Graft graft = Graft.of(request.original(), scratch, request.sheets());
              graft.write(fresh);
              ReadBack.check(request.original(), graft, request.sheets(), fresh);
            });
      }
    } catch (IOException e) {
      throw Refusals.of(request.target(), e);
    }
  }

  /**
   * Adds rows to sheets of the angler's, and changes nothing else.
   *
   * @throws WorkbookRefused where it cannot be done; the workbook is as it was
   */
  public static SaveResult append(AppendRequest append) throws WorkbookRefused {
    WorkbookPackage book = append.original();
    check(book, book.file(), false);
    SaveRequest request =
        new SaveRequest(
            book, book.file(), book.file(), List.of(), append.now(), append.backupsKept());
    try {
      Path target = place(book.file());
      try (RunLock lock = RunLock.take(target)) {
        lock.removeLeftovers();
        return replace(request, target, fresh -> appended(append, fresh));
      }
    } catch (IOException e) {
      throw Refusals.of(book.file(), e);
    }
  }

  private static void appended(AppendRequest append, Path fresh)
      throws WorkbookRefused, IOException, XMLStreamException {
    WorkbookPackage book = append.original();
    Map<String, PackedPart> edited = new TreeMap<>();
    for (NewRows added : append.sheets()) {
      String part = added.sheet().partName().orElseThrow();
      edited.put(
          PartNames.key(part),
          PackedPart.of(
              new RowAppend(book.file(), added, book.sheetText(part), append.showsDates())
                  .apply()));
      TableGrowth.of(book, added)
          .forEach((table, content) -> edited.put(PartNames.key(table), PackedPart.of(content)));
    }
    Recalculation.asked(book, append.sheets())
        .ifPresent(
            content -> edited.put(PartNames.key(book.workbookPart()), PackedPart.of(content)));
    new NewPackage(book, Set.of(), edited, Map.of()).write(fresh);
    ReadBack.checkAppended(append, edited, fresh);
  }

  /** Writes the new workbook to a file, and compares what stands there with the old one. */
  private interface Making {
    void make(Path fresh) throws WorkbookRefused, IOException, XMLStreamException;
  }

  private static SaveResult replace(SaveRequest request, Path target, Making making)
      throws WorkbookRefused, IOException {
    Optional<Fingerprint> before = before(request, target);
    Path fresh = TemporaryFiles.fresh(target);
    try {
      making.make(fresh);
      Backups backups = new Backups(target);
      Optional<Path> backup = Optional.empty();
      if (before.isPresent()) {
        Disk.copyPermissions(target, fresh);
        requireUnchanged(request, target, before.get());
        backup = Optional.of(backups.make(target, before.get(), request.now()));
        OpenElsewhere.check(target);
        requireUnchanged(request, target, before.get());
      } else if (Files.exists(target, LinkOption.NOFOLLOW_LINKS)) {
        throw changed(request.target());
      }
      Files.move(
          fresh, target, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
      Disk.syncFolder(target.getParent());
      if (backup.isPresent()) {
        keepLast(backups, request.backupsKept());
      }
      return new SaveResult(request.target(), backup);
    } catch (XMLStreamException e) {
      throw Refusals.refused(
          request.target(),
          "a part inside the workbook could not be read",
          "Save it anew from your spreadsheet program and run again.");
    } finally {
      Files.deleteIfExists(fresh);
    }
  }

  /** What stands at the target; for the original itself it must be what was read. */
  private static Optional<Fingerprint> before(SaveRequest request, Path target)
      throws WorkbookRefused, IOException {
    boolean same =
        request.target().equals(request.original().file())
            || isSame(request.original().file(), target);
    if (!Files.exists(target)) {
      if (same) {
        throw changed(request.target());
      }
      return Optional.empty();
    }
    return Optional.of(same ? request.original().fingerprint() : Fingerprint.of(target));
  }

  private static void requireUnchanged(SaveRequest request, Path target, Fingerprint before)
      throws WorkbookRefused, IOException {
    if (!Files.exists(target) || !Fingerprint.of(target).equals(before)) {
      throw changed(request.target());
    }
  }

  private static WorkbookRefused changed(Path file) {
    return new WorkbookRefused(
        file,
        "it was changed, moved or deleted by somebody while this program was at work",
        "Run again. Nothing was written.");
  }

  /** Old backups are a matter of tidiness: the workbook is already safe. */
  private static void keepLast(Backups backups, int kept) {
    try {
      backups.keepLast(kept);
    } catch (IOException e) {
      // The next run tries again.
    }
  }

  private static boolean isSame(Path one, Path other) {
    try {
      return Files.exists(other) && Files.isSameFile(one, other);
    } catch (IOException e) {
      return false;
    }
  }

  /** The real file behind links, so that a link stays one; for a new file its real folder. */
  private static Path place(Path target) throws IOException, WorkbookRefused {
    if (Files.isDirectory(target)) {
      throw Refusals.refused(target, "this is a folder", "Name a file in it.");
    }
    if (Files.exists(target)) {
      return target.toRealPath();
    }
    Path folder = target.toAbsolutePath().getParent();
    return folder.toRealPath().resolve(target.getFileName());
  }
}
