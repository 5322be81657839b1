package sparewell.render;

/** Names that drawings share. */
final class Drawings {
  static final String MAIN = "http://schemas.openxmlformats.org/drawingml/2006/main";
  static final String SHEET = "http://schemas.openxmlformats.org/drawingml/2006/spreadsheetDrawing";
  static final String CHART = "http://schemas.openxmlformats.org/drawingml/2006/chart";

  private Drawings() {}
}
