package dev.filmward.intake;

import com.fasterxml.jackson.core.JsonProcessingException;
import dev.filmward.film.Structure;
import dev.filmward.film.Structures;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/**
 * Takes a structures file (YAML), gives the structures in it, or all that is wrong with it.
 *
 * <p>UTF-8, UTF-16 or Windows-1252, at most 4 MB. Stateless.
 */
public final class StructuresFile {
  private static final int LARGEST = 4 * 1024 * 1024;
  private static final String START = "start it with \"structures:\" and list them below";

  private StructuresFile() {}

  /**
   * Reads the whole stream; does not close it.
   *
   * @param fileName for messages
   * @throws StructuresFault with every fault found
   */
  public static Structures read(InputStream in, String fileName)
      throws IOException, StructuresFault {
    byte[] bytes = in.readNBytes(LARGEST + 1);
    Faults faults = new Faults(fileName);
    if (bytes.length > LARGEST) {
      faults.add(1, "the file is larger than 4 MB; no list of structures is");
      faults.throwIfAny();
    }
    List<Structure> structures = structures(document(bytes, faults), faults);
    faults.throwIfAny();
    return new Structures(structures);
  }

  private static YamlNode document(byte[] bytes, Faults faults)
      throws IOException, StructuresFault {
    InputStream utf8 = Utf8Input.open(new ByteArrayInputStream(bytes)).stream();
    String text = new String(utf8.readAllBytes(), StandardCharsets.UTF_8);
    try {
      return YamlTree.read(text, faults);
    } catch (JsonProcessingException e) {
      int line = e.getLocation() == null ? 1 : e.getLocation().getLineNr();
      faults.add(line, "not YAML: " + inOneLine(e.getOriginalMessage()));
      faults.throwIfAny();
      throw e;
    }
  }

  /** Leaves out the places that the YAML library quotes, which are indented. */
  private static String inOneLine(String message) {
    return Words.cut(
        message.lines().filter(line -> !line.startsWith(" ")).collect(Collectors.joining(", ")));
  }

  private static List<Structure> structures(YamlNode document, Faults faults) {
    Entries file = Entries.of(document, "the file", faults, List.of("structures"));
    List<Structure> structures = new ArrayList<>();
    if (!(file.node("structures").orElse(null) instanceof YamlNode.Listing listing)
        || listing.items().isEmpty()) {
      if (document instanceof YamlNode.Mapping) {
        faults.add(document.line(), "no structures are in the file; " + START);
      }
      return structures;
    }
    StructureReader reader = new StructureReader(faults);
    int number = 0;
    for (YamlNode node : listing.items()) {
      number++;
      reader.read(node, number).ifPresent(structure -> add(structure, node, structures, faults));
    }
    return structures;
  }

  private static void add(
      Structure structure, YamlNode node, List<Structure> structures, Faults faults) {
    if (structures.stream().anyMatch(other -> other.code().equals(structure.code()))) {
      faults.add(
          node.line(),
          "structure "
              + Words.cut(structure.code())
              + " is there twice; give every structure a code of its own");
    }
    structures.add(structure);
  }
}
