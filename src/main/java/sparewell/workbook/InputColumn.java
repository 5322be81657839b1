package sparewell.workbook;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A column of an input sheet.
 *
 * @param name its header as the template shows it, without unit
 * @param kind what its cells hold
 * @param required whether the sheet cannot be read without the column; a blank cell in it is an
 *     error
 * @param choices the words a cell may hold, where there is a fixed list
 * @param refersTo name of the input sheet whose first column lists the known keys; empty where none
 * @param aliases other headers accepted
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
  public InputColumn {
    choices = List.copyOf(choices);
    aliases = List.copyOf(aliases);
    fileHeadings = List.copyOf(fileHeadings);
  }

  /** Kind of value that cells hold. */
  public enum Kind {
    /** Any text. */
    TEXT,
    /** Size as text; a date is read as the fraction that was typed. */
    SIZE,
    /** Mass of one piece: oz or g without a unit in the header. */
    ITEM_MASS,
    /** Mass of a box or load: lb or kg without a unit in the header. */
    LOAD_MASS,
    /** Length above 0: in or cm without a unit in the header. */
    LENGTH,
    /** Position, signed: in or cm without a unit in the header. */
    POSITION,
    /** Whole pieces, at least 0. */
    PIECES,
    /** A count in the style's counting unit: whole pieces, or packs with parts of a pack. */
    COUNT,
    /** Hours, at least 0. */
    HOURS,
    /** Days, above 0. */
    DAYS,
    /** A number, at least 0. */
    NUMBER,
    /** An amount of money, at least 0. */
    MONEY,
    /** A probability between 0 and 1. */
    CHANCE,
    /** A date. */
    DATE,
    /** Yes or no. */
    YES_NO,
    /** One of the choices. */
    CHOICE,
    /** Kind given by the row's first cell: settings and boat figures. */
    BY_ROW
  }

  static InputColumn required(String name, Kind kind, String meaning) {
    return plain(name, kind, true, "", meaning);
  }

  static InputColumn optional(String name, Kind kind, String standard, String meaning) {
    return plain(name, kind, false, standard, meaning);
  }

  private static InputColumn plain(
      String name, Kind kind, boolean required, String standard, String meaning) {
    List<String> none = List.of();
    return new InputColumn(
        name, kind, required, none, "", none, none, standard, false, Optional.empty(), meaning);
  }

  InputColumn refersTo(String sheet) {
    return with(choices, sheet, aliases, fileHeadings, standardForBad, range);
  }

  InputColumn oneOf(String... words) {
    return with(List.of(words), refersTo, aliases, fileHeadings, standardForBad, range);
  }

  InputColumn alias(String... headers) {
    return with(choices, refersTo, List.of(headers), fileHeadings, standardForBad, range);
  }

  /** Copy with further headers for files to import. */
  InputColumn inFiles(String... headers) {
    return with(choices, refersTo, aliases, List.of(headers), standardForBad, range);
  }

  /** Copy for files to import, which accepts their headers too. */
  InputColumn ofFile() {
    List<String> all = new ArrayList<>(aliases);
    all.addAll(fileHeadings);
    return with(choices, refersTo, all, fileHeadings, standardForBad, range);
  }

  /** Copy whose unusable cells count as blank. */
  InputColumn forgiving() {
    return with(choices, refersTo, aliases, fileHeadings, true, range);
  }

  /** Copy whose values must lie between these, both included. */
  InputColumn within(double least, double most, String unit) {
    Range allowed = new Range(least, most, unit);
    return with(choices, refersTo, aliases, fileHeadings, standardForBad, Optional.of(allowed));
  }

  private InputColumn with(
      List<String> someChoices,
      String sheet,
      List<String> headers,
      List<String> inFiles,
      boolean forBad,
      Optional<Range> allowed) {
    return new InputColumn(
        name,
        kind,
        required,
        someChoices,
        sheet,
        headers,
        inFiles,
        standard,
        forBad,
        allowed,
        meaning);
  }
}
