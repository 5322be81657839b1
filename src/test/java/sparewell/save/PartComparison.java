package sparewell.save;

import java.io.ByteArrayInputStream;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import javax.xml.parsers.DocumentBuilderFactory;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.w3c.dom.NodeList;
import sparewell.ooxml.Zips;

/**
 * Compares two workbooks part by part and lists every difference outside the analyser's own sheets.
 * Written against the format's description with the JDK's DOM, on purpose without the code that it
 * judges.
 */
public final class PartComparison {
  private static final String R =
      "http://schemas.openxmlformats.org/officeDocument/2006/relationships";

  private final Map<String, byte[]> before;
  private final Map<String, byte[]> after;
  private final List<String> ownSheets;
  private final List<String> differences = new ArrayList<>();
  private final String workbook;

  private PartComparison(byte[] before, byte[] after, List<String> ownSheets) {
    this.before = Zips.read(before);
    this.after = Zips.read(after);
    this.ownSheets = ownSheets;
    this.workbook = workbookPart(this.before);
  }

  /** Differences in words; none if nothing of the angler's changed. */
  public static List<String> differences(byte[] before, byte[] after, List<String> ownSheets)
      throws Exception {
    PartComparison comparison = new PartComparison(before, after, ownSheets);
    comparison.run();
    return comparison.differences;
  }

  private void run() throws Exception {
    String folder = workbook.substring(0, workbook.lastIndexOf('/') + 1);
    String relationships = folder + "_rels/" + workbook.substring(folder.length()) + ".rels";
    List<String> extra = new ArrayList<>(after.keySet());
    extra.removeAll(before.keySet());
    for (String name : before.keySet()) {
      if (!after.containsKey(name)) {
        differences.add(name + " is gone");
      } else if (Arrays.equals(before.get(name), after.get(name))) {
        continue;
      } else if (name.equals(workbook)) {
        same(name, bookContent(before, relationships), bookContent(after, relationships));
      } else if (name.endsWith("styles.xml")) {
        styles(name);
      } else if (name.equals(relationships) || name.equals("[Content_Types].xml")) {
        added(name, extra);
      } else {
        differences.add(name + " has other bytes");
      }
    }
    for (String name : extra) {
      boolean firstStyles = name.equals("xl/styles.xml");
      if (!name.contains("sparewell_") && !firstStyles) {
        differences.add(name + " is new and not marked as ours");
      }
    }
  }

  private void same(String name, List<String> one, List<String> other) {
    if (!one.equals(other)) {
      List<String> gone = new ArrayList<>(one);
      gone.removeAll(other);
      List<String> come = new ArrayList<>(other);
      come.removeAll(one);
      differences.add(name + " differs: gone " + gone + ", come " + come);
    }
  }

  /** Everything in the workbook part that is the angler's, with positions of sheets as names. */
  private List<String> bookContent(Map<String, byte[]> parts, String relationships)
      throws Exception {
    Element root = dom(parts.get(workbook)).getDocumentElement();
    Map<String, String> targets = new TreeMap<>();
    for (Element e : children(dom(parts.get(relationships)).getDocumentElement())) {
      targets.put(e.getAttribute("Id"), e.getAttribute("Target"));
    }
    List<String> sheets = new ArrayList<>();
    List<String> content = new ArrayList<>();
    for (Element e : children(first(root, "sheets"))) {
      sheets.add(e.getAttribute("name"));
    }
    content.add(attributes(root, List.of()));
    String active = "active " + sheets.get(0);
    for (Node n = root.getFirstChild(); n != null; n = n.getNextSibling()) {
      if (!(n instanceof Element section)) {
        if (n.getNodeType() == Node.COMMENT_NODE) {
          content.add("comment " + n.getNodeValue());
        }
        continue;
      }
      switch (section.getLocalName()) {
        case "sheets" -> {
          for (Element e : children(section)) {
            if (!ownSheets.contains(e.getAttribute("name"))) {
              content.add(attributes(e, List.of()) + targets.get(e.getAttributeNS(R, "id")));
            }
          }
        }
        case "definedNames" -> {
          for (Element e : children(section)) {
            String at = e.getAttribute("localSheetId");
            String sheet = at.isEmpty() ? "" : sheets.get(Integer.parseInt(at));
            if (!ownSheets.contains(sheet)) {
              content.add(attributes(e, List.of("localSheetId")) + sheet + e.getTextContent());
            }
          }
        }
        case "bookViews" -> {
          for (Element e : children(section)) {
            String view = attributes(e, List.of("activeTab", "firstSheet"));
            if (!view.endsWith("[]")) {
              content.add(view);
            }
            active = "active " + sheet(sheets, e.getAttribute("activeTab"));
          }
        }
        case "calcPr" -> {
          String text = attributes(section, List.of("fullCalcOnLoad"));
          if (section.getAttributes().getLength() > 1 || !section.hasAttribute("fullCalcOnLoad")) {
            content.add(text);
          }
        }
        default -> content.add(canonical(section));
      }
    }
    content.add(active);
    return content;
  }

  private static String sheet(List<String> sheets, String position) {
    return sheets.get(position.isEmpty() ? 0 : Integer.parseInt(position));
  }

  private void styles(String name) throws Exception {
    List<Element> old = children(dom(before.get(name)).getDocumentElement());
    Element root = dom(after.get(name)).getDocumentElement();
    for (Element section : old) {
      List<String> was = children(section).stream().map(PartComparison::canonical).toList();
      List<String> now =
          children(first(root, section.getLocalName())).stream()
              .map(PartComparison::canonical)
              .toList();
      boolean list = section.hasAttribute("count") || !was.isEmpty();
      if (list && (now.size() < was.size() || !now.subList(0, was.size()).equals(was))) {
        differences.add(name + " changed in " + section.getLocalName());
      }
      Element there = first(root, section.getLocalName());
      if (!attributes(section, List.of("count")).equals(attributes(there, List.of("count")))) {
        differences.add(name + " changed attributes of " + section.getLocalName());
      }
      if (there.hasAttribute("count")
          && Integer.parseInt(there.getAttribute("count")) != now.size()) {
        differences.add(name + " miscounts " + section.getLocalName());
      }
    }
  }

  private void added(String name, List<String> extra) throws Exception {
    List<String> was = new ArrayList<>();
    children(dom(before.get(name)).getDocumentElement()).forEach(e -> was.add(canonical(e)));
    for (Element e : children(dom(after.get(name)).getDocumentElement())) {
      String target =
          e.hasAttribute("PartName") ? e.getAttribute("PartName") : e.getAttribute("Target");
      boolean ours = target.startsWith("/") && extra.contains(target.substring(1));
      if (!was.remove(canonical(e)) && !ours && !e.getAttribute("Extension").equals("rels")) {
        differences.add(name + " has a strange " + canonical(e));
      }
    }
    if (!was.isEmpty()) {
      differences.add(name + " lost " + was);
    }
  }

  private static String workbookPart(Map<String, byte[]> parts) {
    try {
      for (Element e : children(dom(parts.get("_rels/.rels")).getDocumentElement())) {
        if (e.getAttribute("Type").endsWith("/officeDocument")) {
          return e.getAttribute("Target").replaceFirst("^/", "");
        }
      }
    } catch (Exception e) {
      throw new IllegalArgumentException(e);
    }
    throw new IllegalArgumentException("no workbook");
  }

  private static Document dom(byte[] xml) throws Exception {
    DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
    factory.setNamespaceAware(true);
    return factory.newDocumentBuilder().parse(new ByteArrayInputStream(xml));
  }

  private static Element first(Element root, String name) {
    NodeList found = root.getElementsByTagNameNS(root.getNamespaceURI(), name);
    if (found.getLength() == 0) {
      throw new IllegalArgumentException("no " + name);
    }
    return (Element) found.item(0);
  }

  private static List<Element> children(Element e) {
    List<Element> children = new ArrayList<>();
    for (Node n = e.getFirstChild(); n != null; n = n.getNextSibling()) {
      if (n instanceof Element child) {
        children.add(child);
      }
    }
    return children;
  }

  private static String attributes(Element e, List<String> without) {
    TreeSet<String> all = new TreeSet<>();
    for (int i = 0; i < e.getAttributes().getLength(); i++) {
      Node a = e.getAttributes().item(i);
      if (!a.getNodeName().startsWith("xmlns") && !without.contains(a.getNodeName())) {
        all.add("{" + a.getNamespaceURI() + "}" + a.getLocalName() + "=" + a.getNodeValue());
      }
    }
    return e.getLocalName() + all;
  }

  private static String canonical(Element e) {
    StringBuilder out =
        new StringBuilder("{" + e.getNamespaceURI() + "}" + attributes(e, List.of()));
    for (Node n = e.getFirstChild(); n != null; n = n.getNextSibling()) {
      if (n instanceof Element child) {
        out.append(canonical(child));
      } else if (n.getNodeType() == Node.TEXT_NODE && !n.getNodeValue().isBlank()) {
        out.append(n.getNodeValue());
      }
    }
    return out.append("/").toString();
  }
}
