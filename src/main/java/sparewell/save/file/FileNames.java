package sparewell.save.file;

/** A file name's two halves. */
public final class FileNames {
  private FileNames() {}

  static String stem(String name) {
    int dot = name.lastIndexOf('.');
    return dot > 0 ? name.substring(0, dot) : name;
  }

  /** With its dot; empty if none. */
  public static String extension(String name) {
    int dot = name.lastIndexOf('.');
    return dot > 0 ? name.substring(dot) : "";
  }
}
