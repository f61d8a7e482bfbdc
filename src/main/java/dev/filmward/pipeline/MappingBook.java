package dev.filmward.pipeline;

import dev.filmward.intake.Mapping;
import dev.filmward.intake.MappingFault;
import dev.filmward.intake.MappingFile;
import dev.filmward.intake.Mappings;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The mappings that a plant keeps: a YAML file each, in one folder, which people may also edit. It
 * is looked at anew for every file, so that an edit holds at once; a mapping with faults is left
 * out, and the log says so. Thread-safe.
 */
public final class MappingBook {
  private static final Logger LOG = LoggerFactory.getLogger(MappingBook.class);
  private static final String ENDING = ".yaml";

  private final Optional<Path> folder;
  private final Mappings given;

  private MappingBook(Optional<Path> folder, Mappings given) {
    this.folder = folder;
    this.given = given;
  }

  /** The mappings of a folder, which need not be there yet. */
  public static MappingBook in(Path folder) {
    return new MappingBook(Optional.of(folder), Mappings.NONE);
  }

  /** No mappings, and no place to keep any. */
  public static MappingBook none() {
    return new MappingBook(Optional.empty(), Mappings.NONE);
  }

  /** The same folder, but files are read through some mappings only that a person named. */
  public MappingBook only(Mappings named) {
    return new MappingBook(folder, named);
  }

  /** The mappings that files are read through now. */
  public Mappings current() {
    return given.all().isEmpty() ? kept() : given;
  }

  /** The mappings that are kept. */
  public synchronized Mappings kept() {
    List<Mapping> all = new ArrayList<>();
    for (Path file : files()) {
      try {
        all.add(read(file.getFileName().toString(), Files.readAllBytes(file)));
      } catch (MappingFault e) {
        LOG.warn("A mapping is not used, since it has faults: {}", e.getMessage());
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
    return new Mappings(all);
  }

  /**
   * Keeps a mapping under its name; one with that name is replaced.
   *
   * @throws MappingFault saying all that is wrong with it
   * @throws IllegalArgumentException if another is for the same files
   */
  public synchronized Mapping keep(byte[] yaml) throws MappingFault, IOException {
    Mapping mapping = read("the mapping", yaml);
    String name = fileName(mapping);
    Optional<Mapping> other =
        kept().all().stream()
            .filter(kept -> !fileName(kept).equals(name))
            .filter(kept -> Mappings.areForTheSameFiles(kept, mapping))
            .findFirst();
    if (other.isPresent()) {
      throw new IllegalArgumentException(
          "the mapping \""
              + other.get().name()
              + "\" is for files with the same headings; give this one that name to replace it");
    }
    Path place = folder.orElseThrow(() -> new IllegalStateException("no mappings are kept here"));
    Files.createDirectories(place);
    Path part = Files.createTempFile(place, "mapping", ".part");
    Files.write(part, yaml);
    Files.move(
        part,
        place.resolve(name),
        StandardCopyOption.REPLACE_EXISTING,
        StandardCopyOption.ATOMIC_MOVE);
    return mapping;
  }

  private List<Path> files() {
    if (folder.isEmpty() || !Files.isDirectory(folder.get())) {
      return List.of();
    }
    try (Stream<Path> files = Files.list(folder.get())) {
      return files.filter(file -> file.toString().endsWith(ENDING)).sorted().toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Mapping read(String name, byte[] yaml) throws MappingFault, IOException {
    return MappingFile.read(new ByteArrayInputStream(yaml), name);
  }

  /** Of letters and digits only, so that no name leads out of the folder. */
  private static String fileName(Mapping mapping) {
    String plain = mapping.name().toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}0-9]+", "-");
    String cut = plain.substring(0, Math.min(plain.length(), 80)).replaceAll("^-|-$", "");
    return (cut.isEmpty() ? "mapping" : cut) + ENDING;
  }
}
