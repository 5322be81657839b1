package sparewell.render;

/** Notes on headings: their text, and the boxes that show them. */
final class NotesXml {
  private static final String AUTHOR = "Sparewell";
  private static final int CHARACTERS_A_LINE = 34;
  private static final int SHAPES_A_SHEET = 1_024;

  private NotesXml() {}

  static void comments(Xml xml, Grid grid) {
    xml.open("comments xmlns='{}'", Xml.SHEET);
    xml.open("authors").leafText("author", AUTHOR).close().open("commentList");
    for (Grid.Note note : grid.notes) {
      xml.open("comment ref='{}' authorId='0'", Grid.reference(note.row(), note.column()));
      xml.open("text").open("r").open("rPr").leaf("sz val='9'");
      xml.leaf("color indexed='81'").leaf("rFont val='Arial'").leaf("family val='2'");
      xml.close();
      CellText.write(xml, note.text());
      xml.close(3);
    }
    xml.close(2);
  }

  /** The part with the boxes, in the drawing language that spreadsheets keep for notes. */
  static void shapes(Xml xml, Grid grid, int sheet) {
    xml.open(
        "xml xmlns:v='urn:schemas-microsoft-com:vml' xmlns:o='urn:schemas-microsoft-com:office:office'"
            + " xmlns:x='urn:schemas-microsoft-com:office:excel'");
    xml.open("o:shapelayout v:ext='edit'");
    xml.leaf("o:idmap v:ext='edit' data='{}'", sheet).close();
    xml.open(
        "v:shapetype id='_x0000_t202' coordsize='21600,21600' o:spt='202'"
            + " path='m,l,21600r21600,l21600,xe'");
    xml.leaf("v:stroke joinstyle='miter'");
    xml.leaf("v:path gradientshapeok='t' o:connecttype='rect'").close();
    int id = sheet * SHAPES_A_SHEET;
    for (Grid.Note note : grid.notes) {
      shape(xml, note, ++id);
    }
    xml.close();
  }

  private static void shape(Xml xml, Grid.Note note, int id) {
    int high = (1 + note.text().length() / CHARACTERS_A_LINE) * 12 + 8;
    int column = note.column();
    int row = note.row() - 1;
    xml.open(
        "v:shape id='_x0000_s{}' type='#_x0000_t202' style='position:absolute;margin-left:60pt;"
            + "margin-top:2pt;width:170pt;height:{}pt;z-index:1;visibility:hidden'"
            + " fillcolor='#ffffe1' o:insetmode='auto'",
        id,
        high);
    xml.leaf("v:fill color2='#ffffe1'").leaf("v:path o:connecttype='none'");
    xml.open("v:textbox style='mso-direction-alt:auto'");
    xml.leaf("div style='text-align:left'").close();
    xml.open("x:ClientData ObjectType='Note'").leaf("x:MoveWithCells").leaf("x:SizeWithCells");
    int lastRow = row + 2 + high / 15;
    xml.leafText(
        "x:Anchor", column + ", 12, " + row + ", 4, " + (column + 3) + ", 20, " + lastRow + ", 4");
    xml.leafText("x:AutoFill", "False").leafText("x:Row", row).leafText("x:Column", column - 1);
    xml.close(2);
  }
}
