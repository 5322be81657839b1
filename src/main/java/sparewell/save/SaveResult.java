package sparewell.save;

import java.nio.file.Path;
import java.util.Optional;

/**
 * What was written.
 *
 * @param file the workbook that was written
 * @param backup the copy of what stood there before; empty where nothing did
 */
public record SaveResult(Path file, Optional<Path> backup) {}
