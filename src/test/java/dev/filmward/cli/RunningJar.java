package dev.filmward.cli;

import dev.filmward.access.TestPeople;
import dev.filmward.people.Secret;
import dev.filmward.web.Api;
import java.io.BufferedReader;
import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The packaged jar as a process of its own. Its temporary files and messages go to a folder of the
 * test; it does not outlive the test.
 */
public final class RunningJar implements AutoCloseable {
  private static final Duration PATIENCE = Duration.ofSeconds(60);
  private static final Pattern ADDRESS = Pattern.compile("Open http://127\\.0\\.0\\.1:(\\d+)/");

  private final Process process;
  private final Path messages;

  private RunningJar(Process process, Path messages) {
    this.process = process;
    this.messages = messages;
  }

  /** What a command that has ended wrote to standard output, and its exit status. */
  record Ended(int status, String out, String err) {}

  /**
   * What a process may use.
   *
   * @param heapMb most memory for objects
   * @param fileKb greatest length of a file; a write beyond it fails as on a full disk; 0 for any
   */
  record Limits(int heapMb, long fileKb) {
    static final Limits USUAL = new Limits(400, 0);
  }

  /** Starts a command; its folder gets {@code tmp} and {@code messages.txt}. */
  static RunningJar start(Path folder, Object... arguments) throws IOException {
    return start(folder, Limits.USUAL, arguments);
  }

  static RunningJar start(Path folder, Limits limits, Object... arguments) throws IOException {
    Path messages = folder.resolve("messages.txt");
    List<String> command = new ArrayList<>();
    if (limits.fileKb() > 0) {
      command.addAll(List.of("bash", "-c", "ulimit -f " + limits.fileKb() + "; exec \"$@\"", "-"));
    }
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    // the compiler and collector that start fastest
    command.addAll(List.of("-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC"));
    command.add("-Xmx" + limits.heapMb() + "m");
    command.add("-Djava.io.tmpdir=" + Files.createDirectories(temporary(folder)));
    command.addAll(List.of("-jar", System.getProperty("filmward.jar", "target/filmward.jar")));
    for (Object argument : arguments) {
      command.add(argument.toString());
    }
    ProcessBuilder builder =
        new ProcessBuilder(command)
            .redirectError(ProcessBuilder.Redirect.appendTo(messages.toFile()));
    return new RunningJar(builder.start(), messages);
  }

  static Path temporary(Path folder) {
    return folder.resolve("tmp");
  }

  /** Runs a command to its end. */
  static Ended run(Path folder, Object... arguments) throws Exception {
    return run(folder, Limits.USUAL, arguments);
  }

  static Ended run(Path folder, Limits limits, Object... arguments) throws Exception {
    try (RunningJar jar = start(folder, limits, arguments)) {
      String out = jar.restOfOutput();
      int status = jar.awaitEnd(PATIENCE);
      return new Ended(status, out, jar.messages());
    }
  }

  /** What it writes to standard output from now until it ends or is killed. */
  String restOfOutput() throws IOException {
    return new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
  }

  /** A dashboard on a port, 0 for any free one; it answers when this returns, to Kim. */
  public static ServedJar serve(Path folder, Path data, int port) throws Exception {
    return serve(folder, data, port, ZoneId.systemDefault());
  }

  /** The same of a plant in a zone of its own. */
  public static ServedJar serve(Path folder, Path data, int port, ZoneId zone) throws Exception {
    Path structures = folder.resolve("film.yaml");
    Files.writeString(structures, dev.filmward.web.SmallFilm.STRUCTURES);
    Secret session = TestPeople.signedIn(data);
    ServedJar served =
        serving(
            start(
                folder,
                "serve",
                "--data",
                data,
                "--port",
                port,
                "--structures",
                structures,
                "--zone",
                zone.getId()));
    served.api().as(session);
    return served;
  }

  /** The same of a plant that knows no film yet. */
  public static ServedJar serveEmpty(Path folder, Path data) throws Exception {
    Secret session = TestPeople.signedIn(data);
    ServedJar served = serving(start(folder, "serve", "--data", data, "--port", 0));
    served.api().as(session);
    return served;
  }

  /** Waits until a command that serves says where. */
  static ServedJar serving(RunningJar jar) throws Exception {
    CompletableFuture<Integer> announced = CompletableFuture.supplyAsync(jar::announcedPort);
    try {
      int port = announced.get(PATIENCE.toSeconds(), TimeUnit.SECONDS);
      return new ServedJar(jar, port, new Api(port));
    } catch (Exception e) {
      jar.close();
      throw new IllegalStateException("it does not serve: " + jar.messages(), e);
    }
  }

  /** A dashboard that answers. */
  public record ServedJar(RunningJar jar, int port, Api api) implements AutoCloseable {
    public String address(String path) {
      return "http://127.0.0.1:" + port + path;
    }

    @Override
    public void close() {
      jar.close();
    }
  }

  private int announcedPort() {
    try {
      // the stream stays open: the process must be able to go on writing
      BufferedReader lines = process.inputReader(StandardCharsets.UTF_8);
      for (String line = lines.readLine(); line != null; line = lines.readLine()) {
        Matcher address = ADDRESS.matcher(line);
        if (address.find()) {
          return Integer.parseInt(address.group(1));
        }
      }
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
    throw new IllegalStateException("it ended without saying where it serves");
  }

  /** Asks it to stop, as Ctrl-C and the system do, and gives its exit status. */
  public int stop() {
    process.destroy();
    return awaitEnd(Duration.ofSeconds(5));
  }

  /** Takes it away in the middle of whatever it does; what it wrote can still be read. */
  void kill() {
    process.toHandle().destroyForcibly();
    awaitEnd(PATIENCE);
  }

  boolean isAlive() {
    return process.isAlive();
  }

  /** What it wrote to standard error. */
  public String messages() {
    try {
      File file = messages.toFile();
      return file.exists() ? Files.readString(messages) : "";
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  private int awaitEnd(Duration patience) {
    try {
      if (!process.waitFor(patience.toMillis(), TimeUnit.MILLISECONDS)) {
        throw new AssertionError("it has not ended after " + patience + ": " + messages());
      }
      return process.exitValue();
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }

  @Override
  public void close() {
    process.destroyForcibly();
    awaitEnd(PATIENCE);
  }
}
