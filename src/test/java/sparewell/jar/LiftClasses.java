package sparewell.jar;

import java.io.IOException;
import java.io.InputStream;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.zip.CRC32;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import java.util.zip.ZipOutputStream;
import org.objectweb.asm.ClassReader;
import org.objectweb.asm.ClassVisitor;
import org.objectweb.asm.ClassWriter;
import org.objectweb.asm.Opcodes;

/**
 * Gives classes of libraries that were compiled for Java 5 the form of Java 8, with stack maps:
 * Java's archive of loaded classes takes no older ones, and checks them faster. What they do stays
 * as it is. The same jar gives the same bytes.
 */
public final class LiftClasses {
  private static final int OLDEST = Opcodes.V1_8;

  private LiftClasses() {}

  /** Argument: the jar, which is replaced. */
  public static void main(String[] arguments) throws IOException {
    Path jar = Path.of(arguments[0]);
    Path lifted = jar.resolveSibling(jar.getFileName() + ".lifted");
    try (ZipFile from = new ZipFile(jar.toFile());
        URLClassLoader classes =
            new URLClassLoader(
                new URL[] {jar.toUri().toURL()}, ClassLoader.getPlatformClassLoader());
        ZipOutputStream to = new ZipOutputStream(Files.newOutputStream(lifted))) {
      for (ZipEntry entry : List.copyOf(from.stream().toList())) {
        byte[] content;
        try (InputStream in = from.getInputStream(entry)) {
          content = in.readAllBytes();
        }
        if (entry.getName().endsWith(".class") && version(content) < Opcodes.V1_6) {
          content = lift(content, classes);
        }
        put(to, entry, content);
      }
    }
    Files.move(lifted, jar, StandardCopyOption.REPLACE_EXISTING);
  }

  private static int version(byte[] content) {
    return (content[6] & 0xff) << 8 | content[7] & 0xff;
  }

  private static byte[] lift(byte[] content, ClassLoader classes) {
    ClassWriter written =
        new ClassWriter(ClassWriter.COMPUTE_FRAMES) {
          @Override
          protected ClassLoader getClassLoader() {
            return classes;
          }
        };
    ClassVisitor newer =
        new ClassVisitor(Opcodes.ASM9, written) {
          @Override
          public void visit(
              int version,
              int access,
              String name,
              String signature,
              String parent,
              String[] interfaces) {
            super.visit(OLDEST, access, name, signature, parent, interfaces);
          }
        };
    // Java 5's jumps to subroutines have no place in newer classes; a library with such fails here.
    new ClassReader(content).accept(newer, ClassReader.SKIP_FRAMES);
    return written.toByteArray();
  }

  private static void put(ZipOutputStream to, ZipEntry like, byte[] content) throws IOException {
    ZipEntry entry = new ZipEntry(like.getName());
    entry.setTimeLocal(like.getTimeLocal());
    if (like.getMethod() == ZipEntry.STORED) {
      CRC32 checksum = new CRC32();
      checksum.update(content);
      entry.setMethod(ZipEntry.STORED);
      entry.setSize(content.length);
      entry.setCompressedSize(content.length);
      entry.setCrc(checksum.getValue());
    }
    to.putNextEntry(entry);
    to.write(content);
    to.closeEntry();
  }
}
