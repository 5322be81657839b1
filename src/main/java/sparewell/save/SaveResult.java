package sparewell.save;

import java.nio.file.Path;
import java.util.Optional;

/**
 * Result of a save.
 *
 * @param backup copy of the earlier file; empty where there was none
 */
public record SaveResult(Path file, Optional<Path> backup) {}
