package sparewell.save;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import sparewell.ooxml.WorkbookPackage;
import sparewell.ooxml.WorkbookRefused;
import sparewell.save.append.AppendRequest;
import sparewell.save.append.AppendedParts;
import sparewell.save.file.OpenElsewhere;
import sparewell.save.file.Refusals;
import sparewell.save.file.Replacement;

/**
 * Writes our sheets or an import's rows into a workbook: the new file is read back and compared
 * before it may replace the old one.
 */
public final class WorkbookSaver {
  private WorkbookSaver() {}

  /**
   * Refuses early what {@code save} would refuse: a protected, signed or shared workbook, a name of
   * the wrong kind, a file open elsewhere.
   *
   * @param dropSignature whether a signed one is accepted
   */
  public static void check(WorkbookPackage original, Path target, boolean dropSignature)
      throws WorkbookRefused {
    Path file = original.file();
    if (original.structureProtected()) {
      throw WorkbookRefused.of(file, "protected");
    }
    if (original.signed() && !dropSignature) {
      throw WorkbookRefused.of(file, "signed");
    }
    if (original.related("revisionHeaders").isPresent()) {
      throw WorkbookRefused.of(file, "shared");
    }
    String wanted = original.macros() ? ".xlsm" : ".xlsx";
    String name = target.getFileName() == null ? "" : target.getFileName().toString();
    if (!Replacement.extension(name).toLowerCase(Locale.ROOT).equals(wanted)
        && !Replacement.isSame(file, target)) {
      String with = original.macros() ? "with" : "without";
      throw WorkbookRefused.of(target, "ending", with, wanted);
    }
    try {
      OpenElsewhere.check(Replacement.place(target));
    } catch (IOException e) {
      throw Refusals.of(target, e);
    }
  }

  /**
   * Saves our sheets.
   *
   * @param own written for the workbook as it was read, which stays open
   * @param standing the workbook that must not have changed meanwhile: the one read, or the one
   *     that it is a copy of with new rows
   * @param target the file to write: the workbook's own, or another ({@code --out})
   * @param now date and time for the backup's name
   * @param backupsKept how many backups stay, at least 1
   * @param dropSignature whether a signed workbook may be written without its signature
   * @return backup of the earlier file; absent where there was none
   * @throws WorkbookRefused where it cannot be done; the target is as it was
   */
  public static Optional<Path> save(
      OwnParts own,
      WorkbookPackage standing,
      Path target,
      LocalDateTime now,
      int backupsKept,
      boolean dropSignature)
      throws WorkbookRefused {
    check(standing, target, dropSignature);
    return new Replacement(standing.file(), standing.fingerprint(), target, now, backupsKept)
        .replaceBy(fresh -> write(own, fresh));
  }

  private static void write(OwnParts own, Path fresh) throws WorkbookRefused, IOException {
    NewPackage plan = SavePlan.of(own);
    plan.write(fresh);
    ReadBack.check(plan, own.sheets(), fresh);
  }

  /**
   * Adds rows to sheets of the angler's, and changes nothing else.
   *
   * @return backup of the earlier file
   * @throws WorkbookRefused where it cannot be done; the workbook is as it was
   */
  public static Optional<Path> append(AppendRequest append) throws WorkbookRefused {
    WorkbookPackage book = append.original();
    check(book, book.file(), false);
    return new Replacement(
            book.file(), book.fingerprint(), book.file(), append.now(), append.backupsKept())
        .replaceBy(fresh -> append(append, fresh));
  }

  /**
   * Writes a copy of the workbook with new rows, checked as {@link #append} does, for an analysis
   * whose save replaces the workbook together with its sheets.
   *
   * @throws WorkbookRefused where it cannot be done; the workbook is as it was
   */
  public static void copyWithRows(AppendRequest append, Path copy) throws WorkbookRefused {
    WorkbookPackage book = append.original();
    check(book, book.file(), false);
    try {
      append(append, copy);
    } catch (IOException e) {
      throw Refusals.of(copy, e);
    }
  }

  /** Writes a new file with blank sheets, which belong to the angler from then on. */
  public static void copyWithSheets(OwnParts parts, Path copy) throws WorkbookRefused {
    try {
      write(parts, copy);
    } catch (IOException e) {
      throw Refusals.of(copy, e);
    }
  }

  private static void append(AppendRequest append, Path fresh) throws WorkbookRefused, IOException {
    Map<String, PackedPart> edited = AppendedParts.of(append, PackedPart::of);
    NewPackage plan = new NewPackage(append.original(), Set.of(), edited, Map.of());
    plan.write(fresh);
    ReadBack.checkAppended(append, plan, fresh);
  }
}
