package sparewell.workbook.read;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import sparewell.finding.Cell;
import sparewell.finding.Code;
import sparewell.finding.Findings;
import sparewell.ooxml.SheetEntry;
import sparewell.workbook.InputSheet;
import sparewell.workbook.InputSheets;
import sparewell.workbook.value.Names;
import sparewell.workbook.value.NearMiss;

/** Choice of the input sheets among a workbook's sheets; hidden ones count, ours never. */
public final class SheetChoice {
  private final Map<InputSheet, SheetEntry> chosen = new LinkedHashMap<>();
  private final Map<InputSheet, String> near = new LinkedHashMap<>();

  /** Chooses among a workbook's sheets; adds findings on doubtful names. */
  public static SheetChoice of(List<SheetEntry> sheets, Findings findings) {
    SheetChoice choice = new SheetChoice();
    List<SheetEntry> others = new ArrayList<>();
    for (SheetEntry entry : sheets) {
      if (entry.own() || !entry.worksheet()) {
        continue;
      }
      Optional<InputSheet> sheet =
          InputSheets.ALL.stream()
              .filter(s -> Names.fold(s.name()).equals(Names.fold(entry.name())))
              .findFirst();
      if (sheet.isEmpty()) {
        others.add(entry);
      } else if (choice.chosen.putIfAbsent(sheet.get(), entry) != null) {
        findings.add(
            Code.SHEET_TWICE, Cell.ofSheet(entry.name()), choice.chosen.get(sheet.get()).name());
      }
    }
    others.forEach(entry -> choice.compare(entry, findings));
    return choice;
  }

  /** A sheet named nearly like an absent input sheet, or with more words than a required one. */
  private void compare(SheetEntry entry, Findings findings) {
    List<InputSheet> absent =
        InputSheets.ALL.stream().filter(sheet -> !chosen.containsKey(sheet)).toList();
    List<String> names = absent.stream().map(sheet -> Names.fold(sheet.name())).toList();
    String folded = Names.fold(entry.name());
    NearMiss.of(folded, names)
        .or(
            () ->
                absent.stream()
                    .filter(InputSheet::required)
                    .map(sheet -> Names.fold(sheet.name()))
                    .filter(folded::contains)
                    .findFirst())
        .map(name -> absent.get(names.indexOf(name)))
        .ifPresent(
            sheet -> {
              near.putIfAbsent(sheet, entry.name());
              findings.add(Code.SHEET_NAME_NEAR, Cell.ofSheet(entry.name()), sheet.name());
            });
  }

  public Optional<SheetEntry> of(InputSheet sheet) {
    return Optional.ofNullable(chosen.get(sheet)).filter(entry -> entry.partName().isPresent());
  }

  /** Returns whether no required sheet is there, nor one of nearly its name. */
  boolean noneMeant() {
    return InputSheets.ALL.stream()
        .filter(InputSheet::required)
        .noneMatch(sheet -> chosen.containsKey(sheet) || near.containsKey(sheet));
  }

  String missing(InputSheet sheet) {
    String meant =
        Optional.ofNullable(near.get(sheet))
            .map(name -> " Is '" + name + "' meant? Then rename it.")
            .orElse(" Add it, or copy it from a new workbook.");
    return "The sheet '" + sheet.name() + "' is missing." + meant;
  }

  /** The names of the input sheets as the workbook spells them, in the order of the inputs. */
  List<String> names() {
    List<String> names = new ArrayList<>();
    for (InputSheet sheet : InputSheets.ALL) {
      Optional.ofNullable(chosen.get(sheet)).map(SheetEntry::name).ifPresent(names::add);
    }
    return names;
  }
}
