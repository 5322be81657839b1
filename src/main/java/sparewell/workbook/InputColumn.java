package sparewell.workbook;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A column of an input sheet.
 *
 * @param name its header as the template shows it, without unit
 * @param required whether the sheet cannot be read without the column; a blank cell in it is an
 *     error
 * @param choices the words a cell may hold, where there is a fixed list
 * @param refersTo name of the input sheet whose first column lists the known keys; empty where none
 * @param fileHeadings further headers accepted in files to import, not in sheets
 * @param standard value of a blank cell, in words; empty where it has none
 * @param standardForBad whether a cell that cannot be used counts as blank; otherwise its row is
 *     left out
 * @param range allowed values, where fewer than the kind allows
 * @param meaning one sentence for the header's note and the column guide
 */
public record InputColumn(
    String name,
    Kind kind,
    boolean required,
    List<String> choices,
    String refersTo,
    List<String> aliases,
    List<String> fileHeadings,
    String standard,
    boolean standardForBad,
    Optional<Range> range,
    String meaning) {

  public enum Kind {
    TEXT,
    /** Size as text; a date is read as the fraction that was typed. */
    SIZE,
    /** Mass of one piece: oz or g by default. */
    ITEM_MASS,
    /** Mass of a box or load: lb or kg by default. */
    LOAD_MASS,
    LENGTH,
    POSITION,
    PIECES,
    /** A count in the style's counting unit: whole pieces, or packs with parts of a pack. */
    COUNT,
    HOURS,
    DAYS,
    NUMBER,
    MONEY,
    CHANCE,
    DATE,
    YES_NO,
    CHOICE,
    /** Kind given by the row's first cell: settings and boat figures. */
    BY_ROW
  }

  /** The headers by which it is known, in files to import by more of them. */
  public List<String> headers(boolean inFile) {
    List<String> all = new ArrayList<>(List.of(name));
    all.addAll(aliases);
    if (inFile) {
      all.addAll(fileHeadings);
    }
    return all;
  }
}
