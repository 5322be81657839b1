package sparewell.render;

/** The frame that holds a chart in a drawing. */
final class ChartFrame {
  private ChartFrame() {}

  /** Writes the frame. */
  static void write(Plot plot, Grid.Anchor anchor) {
    int id = anchor.ids().getAsInt();
    Xml xml = anchor.xml();
    xml.open("xdr:graphicFrame", "macro", "").open("xdr:nvGraphicFramePr");
    xml.leaf(
        "xdr:cNvPr",
        "id",
        id,
        "name",
        "Chart " + id,
        "descr",
        plot.chart().title() + ". " + plot.chart().see());
    xml.leaf("xdr:cNvGraphicFramePr").close();
    xml.open("xdr:xfrm").leaf("a:off", "x", 0, "y", 0).leaf("a:ext", "cx", 0, "cy", 0).close();
    xml.open("a:graphic").open("a:graphicData", "uri", Drawings.CHART);
    xml.leaf(
        "c:chart",
        "xmlns:c",
        Drawings.CHART,
        "xmlns:r",
        SheetXml.RELATIONS,
        "r:id",
        anchor.chart());
    xml.close(3);
  }
}
