package dev.filmward.intake;

import com.fasterxml.jackson.core.JsonProcessingException;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;

/**
 * Takes a mapping file (YAML), gives the mapping in it, or all that is wrong with it. UTF-8, UTF-16
 * or Windows-1252, at most 1 MB. Stateless.
 */
public final class MappingFile {
  private static final int LARGEST = 1024 * 1024;

  private MappingFile() {}

  /**
   * Reads the whole stream; does not close it.
   *
   * @param fileName for messages
   * @throws MappingFault with every fault found
   */
  public static Mapping read(InputStream in, String fileName) throws IOException, MappingFault {
    byte[] bytes = in.readNBytes(LARGEST + 1);
    Faults faults = new Faults(fileName);
    if (bytes.length > LARGEST) {
      faults.add(1, "the file is larger than 1 MB; no mapping is");
      throw new MappingFault(faults.all());
    }
    String text = text(bytes);
    Optional<Mapping> mapping =
        new MappingReader(faults, text).read(document(text, faults), fileName);
    List<String> found = faults.all();
    if (!found.isEmpty()) {
      throw new MappingFault(found);
    }
    return mapping.orElseThrow();
  }

  private static String text(byte[] bytes) throws IOException {
    InputStream utf8 = Utf8Input.open(new ByteArrayInputStream(bytes)).stream();
    return new String(utf8.readAllBytes(), StandardCharsets.UTF_8);
  }

  private static YamlNode document(String text, Faults faults) throws IOException, MappingFault {
    try {
      return YamlTree.read(text, faults);
    } catch (JsonProcessingException e) {
      int line = e.getLocation() == null ? 1 : e.getLocation().getLineNr();
      faults.add(line, "not YAML: " + Words.cut(e.getOriginalMessage().replaceAll("\\s+", " ")));
      throw new MappingFault(faults.all());
    }
  }
}
