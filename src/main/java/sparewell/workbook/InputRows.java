package sparewell.workbook;

import static sparewell.workbook.InputRow.row;

import java.util.List;
import sparewell.workbook.InputColumn.Kind;

/** The rows of the two sheets that hold one named value a row, each declared once. */
public final class InputRows {
  /** All settings, in the template's order. */
  public static final List<InputRow> SETTINGS =
      List.of(
          row("Units", Kind.CHOICE, "us", "Units where a header names none; also of the results.")
              .oneOf("us", "metric"),
          row("As of", Kind.DATE, "", "Date of the analysis; blank = today."),
          row(
              "Carry at least",
              Kind.PIECES,
              "3",
              "Least pieces of every item aboard (common practice)."),
          row(
              "Chance wanted",
              Kind.CHANCE,
              "0.95",
              "Wanted chance that an item does not run out over the planning hours."),
          row(
              "Planning hours",
              Kind.HOURS,
              "24",
              "Hours until you can refill, used when no event lies ahead."),
          row("Planning days", Kind.DAYS, "3", "Days those hours are spread over."),
          row("Budget", Kind.MONEY, "", "Money for the buy list; blank = no limit."),
          row("Currency", Kind.TEXT, "USD", "Three letters (ISO 4217), for display only."),
          row("Fill factor", Kind.NUMBER, "0.85", "Usable share of a compartment's volume."),
          row(
              "Side tolerance",
              Kind.NUMBER,
              "",
              "Most side moment of the tackle, lb·in or kg·cm; blank = a tenth of the tackle"
                  + " weight times 12 in (30 cm)."),
          row(
                  "Idle after",
                  Kind.NUMBER,
                  "12",
                  "An item aboard whose style was not thrown for so long is listed as idle.")
              .in("months"),
          row("Half-life", Kind.NUMBER, "", "Age at which a trip counts half; blank = all alike.")
              .in("months"),
          row("Label width", Kind.LENGTH, "63", "Width of one label on your label sheets.")
              .in("mm"),
          row("Label height", Kind.LENGTH, "34", "Height of one label.").in("mm"),
          row("Labels across", Kind.PIECES, "3", "Labels side by side on a page."),
          row("Labels down", Kind.PIECES, "8", "Labels below each other on a page."));

  /** All figures of the boat, in the template's order. */
  public static final List<InputRow> BOAT =
      List.of(
          row("Plate weight", Kind.LOAD_MASS, "", "Capacity plate: persons, motor and gear."),
          row("Plate persons weight", Kind.LOAD_MASS, "", "Capacity plate: persons alone."),
          row(
              "Plate includes motor",
              Kind.YES_NO,
              "yes",
              "Yes if the plate says persons, motor and gear (outboards)."),
          row(
              "Trim test weight",
              Kind.LOAD_MASS,
              "",
              "Boat at rest on calm water: weight of a person who walked aft."),
          row("Trim test distance", Kind.LENGTH, "", "How far that person walked aft."),
          row("Trim test bow change", Kind.LENGTH, "", "How far the bow rose."),
          row(
              "Heel test weight",
              Kind.LOAD_MASS,
              "",
              "Boat at rest on calm water: weight of a person who stepped sideways."),
          row("Heel test distance", Kind.LENGTH, "", "How far that person stepped."),
          row("Heel test angle", Kind.NUMBER, "", "Change that a level showed, in degrees.")
              .in("deg"));

  private InputRows() {}
}
