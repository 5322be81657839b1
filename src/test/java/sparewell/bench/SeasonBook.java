package sparewell.bench;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.xssf.streaming.SXSSFRow;
import org.apache.poi.xssf.streaming.SXSSFSheet;
import org.apache.poi.xssf.streaming.SXSSFWorkbook;

/**
 * A large invented season: at scale 1 3,000 stock rows, 150 styles, 600 trips, 6,000 rows of style
 * hours and 6,000 of losses. Rows grow with the scale; styles end at 300, more than any angler
 * throws, and boxes and compartments stay 60 and 14.
 */
final class SeasonBook {
  private static final String[] COVERS = {"open", "grass", "wood", "rock", "docks"};
  private static final int MOST_STYLES = 300;
  private static final int BOXES = 60;
  private static final int COMPARTMENTS = 14;

  private final int scale;
  private final SplittableRandom random = new SplittableRandom(7);
  private final SXSSFWorkbook book = new SXSSFWorkbook(200);
  private final CellStyle date = book.createCellStyle();
  private SXSSFSheet sheet;
  private int row;

  private SeasonBook(int scale) {
    this.scale = scale;
    date.setDataFormat(book.createDataFormat().getFormat("yyyy-mm-dd"));
  }

  /** Writes the workbook; the same scale gives the same season. */
  static void write(Path file, int scale) throws IOException {
    SeasonBook made = new SeasonBook(scale);
    try (OutputStream out = Files.newOutputStream(file)) {
      made.fill();
      made.book.write(out);
    } finally {
      made.book.close();
    }
  }

  private void fill() {
    sheet("Settings", "Setting", "Value");
    line("As of", LocalDate.of(2026, 3, 1));
    line("Budget", 150);
    styles();
    stock();
    boat();
    trips();
    sheet("Events", "Event", "Date", "Hours", "Days", "Cover");
    line("Spring meeting", LocalDate.of(2026, 3, 14), 18, 2, "wood");
    sheet("Event plan", "Event", "Style", "Hours");
    for (int s = 0; s < 12; s++) {
      line("Spring meeting", style(s * 7), 1 + s % 4);
    }
  }

  private int styleCount() {
    return Math.min(150 * scale, MOST_STYLES);
  }

  private static String style(int number) {
    return "Style " + number;
  }

  private void styles() {
    sheet("Styles", "Style", "Family", "Weight each (oz)", "Pieces per pack", "Pack price");
    for (int s = 0; s < styleCount(); s++) {
      line(
          style(s),
          "Family " + s % 12,
          random.nextInt(4, 24) / 64.0 / Math.sqrt(scale),
          s % 3 == 0 ? 8 : 1,
          3 + s % 9 + 0.99);
    }
  }

  private void stock() {
    sheet("Stock", "Style", "Size", "Colour", "Box", "Count", "Counted on");
    for (int i = 0; i < 3_000 * scale; i++) {
      line(
          style(i % styleCount()),
          "size " + i / styleCount() / 5,
          "colour " + i / styleCount() % 5,
          "Box " + (i * 7 + i / 60) % BOXES,
          random.nextInt(0, 6),
          LocalDate.of(2026, 2, 1));
    }
  }

  private void boat() {
    sheet("Boxes", "Box", "Compartment", "Length", "Width", "Height", "Empty weight", "At hand");
    for (int b = 0; b < BOXES; b++) {
      line("Box " + b, "Locker " + b % COMPARTMENTS, 9 + b % 5, 7, 2, 0.5 + b % 7 * 0.1, "no");
    }
    sheet(
        "Compartments",
        "Compartment",
        "From transom",
        "From centreline",
        "Length",
        "Width",
        "Height",
        "Max load");
    for (int c = 0; c < COMPARTMENTS; c++) {
      line("Locker " + c, 20 + 12 * c, c % 2 == 0 ? 22 : -22, 26, 18, 12, 60);
    }
    sheet("Boat", "Item", "Value");
    line("Plate weight", 1_500);
  }

  private void trips() {
    List<Object[]> hours = new ArrayList<>();
    List<Object[]> losses = new ArrayList<>();
    int trips = 600 * scale;
    sheet("Trips", "Trip", "Date", "Hours", "Days", "Cover");
    for (int t = 0; t < trips; t++) {
      LocalDate day = LocalDate.of(2026, 2, 20).minusDays((long) (trips - 1 - t) * 3 / scale);
      line("T" + t, day, 8, 1, COVERS[t % COVERS.length]);
      for (int k = 0; k < 10; k++) {
        int style = (t * 3 + k * 13 + t / 50) % styleCount();
        hours.add(new Object[] {"T" + t, style(style), 0.25 * random.nextInt(1, 13)});
        losses.add(
            new Object[] {
              "T" + t,
              style(style),
              "size " + random.nextInt(4),
              "colour " + random.nextInt(5),
              Math.max(0, random.nextInt(-3 - style % 4, 4)),
              "snag"
            });
      }
    }
    sheet("Style hours", "Trip", "Style", "Hours");
    hours.forEach(this::line);
    sheet("Losses", "Trip", "Style", "Size", "Colour", "Lost", "Cause");
    losses.forEach(this::line);
  }

  private void sheet(String name, Object... headers) {
    sheet = book.createSheet(name);
    row = 0;
    line(headers);
  }

  private void line(Object... values) {
    SXSSFRow made = sheet.createRow(row++);
    for (int c = 0; c < values.length; c++) {
      if (values[c] instanceof Number number) {
        made.createCell(c).setCellValue(number.doubleValue());
      } else if (values[c] instanceof LocalDate day) {
        made.createCell(c).setCellValue(day);
        made.getCell(c).setCellStyle(date);
      } else {
        made.createCell(c).setCellValue(values[c].toString());
      }
    }
  }
}
