package sparewell.render;

/** The frame that holds a chart in a drawing, and the chart's part. */
final class ChartFrame {
  private static final String TYPE =
      "application/vnd.openxmlformats-officedocument.drawingml.chart+xml";

  private ChartFrame() {}

  /** Writes frame and part. */
  static void write(Plot plot, Grid.Anchor anchor) {
    int number = anchor.parts().next("chart");
    String file = "charts/chart" + number + ".xml";
    anchor.parts().add("xl/" + file, TYPE, new ChartXml(plot).part());
    String id = anchor.parts().relate(anchor.drawingPart(), "chart", "../" + file);
    Xml xml = anchor.xml();
    xml.open("xdr:graphicFrame", "macro", "").open("xdr:nvGraphicFramePr");
    xml.leaf(
        "xdr:cNvPr",
        "id",
        anchor.ids().getAsInt(),
        "name",
        "Chart " + number,
        "descr",
        plot.chart().title() + ". " + plot.chart().see());
    xml.leaf("xdr:cNvGraphicFramePr").close();
    xml.open("xdr:xfrm").leaf("a:off", "x", 0, "y", 0).leaf("a:ext", "cx", 0, "cy", 0).close();
    xml.open("a:graphic").open("a:graphicData", "uri", Drawings.CHART);
    xml.leaf("c:chart", "xmlns:c", Drawings.CHART, "xmlns:r", SheetXml.RELATIONS, "r:id", id);
    xml.close(3);
  }
}
