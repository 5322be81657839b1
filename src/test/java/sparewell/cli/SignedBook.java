package sparewell.cli;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import java.util.zip.ZipOutputStream;

/**
 * A workbook with the parts of a digital signature as ECMA-376 part 2, section 10 lays them out;
 * the signature itself is empty.
 */
final class SignedBook {
  private static final String PACKAGE = "http://schemas.openxmlformats.org/package/2006/";
  private static final String TYPE = PACKAGE + "relationships/digital-signature/";
  private static final String CONTENT = "application/vnd.openxmlformats-package.digital-signature-";

  private SignedBook() {}

  static Path of(Path book, Path signed) throws IOException {
    try (ZipFile from = new ZipFile(book.toFile());
        OutputStream file = Files.newOutputStream(signed);
        ZipOutputStream to = new ZipOutputStream(file)) {
      for (ZipEntry entry : from.stream().toList()) {
        String text =
            new String(from.getInputStream(entry).readAllBytes(), StandardCharsets.ISO_8859_1);
        if (entry.getName().equals("_rels/.rels")) {
          text = with(text, "Relationships", relationship("origin", "_xmlsignatures/origin.sigs"));
        }
        if (entry.getName().equals("[Content_Types].xml")) {
          text =
              with(
                  text,
                  "Types",
                  "<Default Extension=\"sigs\" ContentType=\""
                      + CONTENT
                      + "origin\"/><Override PartName=\"/_xmlsignatures/sig1.xml\" ContentType=\""
                      + CONTENT
                      + "xmlsignature+xml\"/>");
        }
        put(to, entry.getName(), text);
      }
      put(to, "_xmlsignatures/origin.sigs", "");
      put(
          to,
          "_xmlsignatures/_rels/origin.sigs.rels",
          "<Relationships xmlns=\""
              + PACKAGE
              + "relationships\">"
              + relationship("signature", "sig1.xml")
              + "</Relationships>");
      put(
          to,
          "_xmlsignatures/sig1.xml",
          "<Signature xmlns=\"http://www.w3.org/2000/09/xmldsig#\"/>");
    }
    return signed;
  }

  private static String relationship(String kind, String target) {
    return "<Relationship Id=\"rIdSig\" Type=\"" + TYPE + kind + "\" Target=\"" + target + "\"/>";
  }

  private static String with(String text, String root, String more) {
    return text.replace("</" + root + ">", more + "</" + root + ">");
  }

  private static void put(ZipOutputStream to, String name, String text) throws IOException {
    to.putNextEntry(new ZipEntry(name));
    to.write(text.getBytes(StandardCharsets.ISO_8859_1));
    to.closeEntry();
  }
}
