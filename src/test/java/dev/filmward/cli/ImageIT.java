package dev.filmward.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import java.util.zip.GZIPInputStream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The container image is laid out as the OCI image specification says, and holds what it must. */
class ImageIT {
  private static final long PATIENCE_MIN = 8;

  @TempDir private static Path folder;
  private static Path layout;

  @BeforeAll
  static void make() throws Exception {
    Path jmods = Path.of(System.getProperty("java.home"), "jmods");
    assumeTrue(
        Files.isDirectory(jmods) && System.getProperty("os.name").equals("Linux"),
        "the image is made on Linux, from a JDK with jmods");
    Path tar = folder.resolve("image.tar");
    layout = Files.createDirectory(folder.resolve("layout"));
    String jar = System.getProperty("filmward.jar", "target/filmward.jar");
    run("bash", "src/dist/image.sh", jar, tar.toString());
    run("tar", "-C", layout.toString(), "-xf", tar.toString());
  }

  @Test
  void everyBlobIsNamedByItsDigestAndNoneIsLeftOver() throws Exception {
    JsonNode layoutFile = Await.json(Files.readString(layout.resolve("oci-layout")));
    assertThat(layoutFile.get("imageLayoutVersion").asText()).isEqualTo("1.0.0");
    Set<String> named = new TreeSet<>();
    JsonNode top = Await.json(Files.readString(layout.resolve("index.json"))).get("manifests");
    assertThat(top).hasSize(1);
    JsonNode manifest = json(top.get(0), named);
    JsonNode config = json(manifest.get("config"), named);
    JsonNode layers = manifest.get("layers");
    JsonNode ids = config.at("/rootfs/diff_ids");
    assertThat(layers).hasSameSizeAs(ids).isNotEmpty();
    for (int i = 0; i < layers.size(); i++) {
      try (InputStream in = new GZIPInputStream(Files.newInputStream(blob(layers.get(i), named)))) {
        assertThat("sha256:" + sha256(in)).isEqualTo(ids.get(i).asText());
      }
    }
    try (Stream<Path> blobs = Files.list(layout.resolve("blobs/sha256"))) {
      assertThat(blobs.map(path -> path.getFileName().toString())).hasSameElementsAs(named);
    }
  }

  @Test
  void itRunsAsNobodyInParticularAndKeepsDataInAVolumeOfThatUser() throws Exception {
    Set<String> named = new TreeSet<>();
    JsonNode top = Await.json(Files.readString(layout.resolve("index.json"))).get("manifests");
    JsonNode manifest = json(top.get(0), named);
    JsonNode config = json(manifest.get("config"), named).get("config");
    assertThat(config.get("User").asText()).isEqualTo("10001:10001");
    assertThat(config.get("Volumes").has("/data")).isTrue();
    assertThat(config.get("ExposedPorts").has("8090/tcp")).isTrue();
    StringBuilder files = new StringBuilder();
    for (JsonNode layer : manifest.get("layers")) {
      files.append(run("tar", "--numeric-owner", "-tvzf", blob(layer, named).toString()));
    }
    List<String> lines = files.toString().lines().toList();
    assertThat(lines)
        .anyMatch(line -> line.matches("drwx------ 10001/10001 .* data/"))
        .anyMatch(line -> line.matches("drwxrwxrwt 0/0 .* tmp/"))
        .anyMatch(line -> line.endsWith(" opt/filmward/filmward.jar"))
        .anyMatch(line -> line.endsWith(" opt/java/bin/java"))
        .anyMatch(line -> line.contains("/libc.so"))
        .noneMatch(line -> line.matches("-..s.*|-.....s.*"));
    assertThat(lines).filteredOn(line -> !line.contains(" 0/0 ")).hasSize(1);
  }

  private static JsonNode json(JsonNode descriptor, Set<String> named) throws Exception {
    return Await.json(Files.readString(blob(descriptor, named)));
  }

  /** The file of a descriptor, which has the size and the digest that it says. */
  private static Path blob(JsonNode descriptor, Set<String> named) throws Exception {
    String digest = descriptor.get("digest").asText().replaceFirst("^sha256:", "");
    Path file = layout.resolve("blobs/sha256").resolve(digest);
    assertThat(Files.size(file)).isEqualTo(descriptor.get("size").asLong());
    try (InputStream in = Files.newInputStream(file)) {
      assertThat(sha256(in)).isEqualTo(digest);
    }
    named.add(digest);
    return file;
  }

  private static String sha256(InputStream in) throws Exception {
    MessageDigest digest = MessageDigest.getInstance("SHA-256");
    try (DigestInputStream all = new DigestInputStream(in, digest)) {
      all.transferTo(java.io.OutputStream.nullOutputStream());
    }
    return HexFormat.of().formatHex(digest.digest());
  }

  private static String run(String... command) throws IOException, InterruptedException {
    Path messages = folder.resolve("messages.txt");
    Process process =
        new ProcessBuilder(command)
            .redirectErrorStream(true)
            .redirectOutput(messages.toFile())
            .start();
    boolean isOver = process.waitFor(PATIENCE_MIN, TimeUnit.MINUTES);
    process.destroyForcibly();
    String said = Files.readString(messages);
    assertThat(isOver && process.exitValue() == 0).as(said).isTrue();
    return said;
  }
}
