package dev.filmward.bench;

import dev.filmward.simulate.LargeFile;
import dev.filmward.simulate.LargeFile.Form;
import java.io.BufferedReader;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * What {@code analyse} of long files costs as a whole process, beside a bare virtual machine and
 * DuckDB, each several times in turns. Makes the files, compares the figures, prints medians.
 *
 * <p>Arguments: the jar, a folder to work in, and how often.
 */
final class AnalyseFiles {
  private static final int ROWS_OF_SAMPLE = 35;
  private static final long MANY = 285_715L * ROWS_OF_SAMPLE;
  private static final long FEW = 28_572L * ROWS_OF_SAMPLE;

  private final Path jar;
  private final Path folder;
  private final Map<String, List<String>> commands = new LinkedHashMap<>();
  private final Map<String, List<Timed>> times = new LinkedHashMap<>();

  private AnalyseFiles(Path jar, Path folder) {
    this.jar = jar;
    this.folder = folder;
  }

  public static void main(String[] args) throws IOException {
    AnalyseFiles bench = new AnalyseFiles(Path.of(args[0]), Path.of(args[1]));
    bench.plan();
    for (int i = 0; i < Integer.parseInt(args[2]); i++) {
      bench.commands.forEach(bench::time);
    }
    bench.report();
  }

  private void plan() throws IOException {
    Files.createDirectories(folder);
    Path structures = folder.resolve("structures.yaml");
    Files.writeString(structures, LargeFile.structuresYaml());
    Path many = made("long10m", MANY, Form.LONG);
    commands.put("bare", java(BareJvm.class, ""));
    commands.put("long1m", analyse(made("long1m", FEW, Form.LONG), structures));
    commands.put("long10m", analyse(many, structures));
    commands.put("duckdb10m", java(DuckDbAnalysis.class, many.toString()));
    commands.put("quoted10m", analyse(quoted(many), structures));
    commands.put("wide1m", analyse(made("wide1m", FEW / 7, Form.WIDE), structures));
    commands.put("wide10m", analyse(made("wide10m", MANY / 7, Form.WIDE), structures));
  }

  private Path made(String name, long rows, Form form) throws IOException {
    Path file = folder.resolve(name + ".csv");
    if (!Files.exists(file)) {
      try (OutputStream out = Files.newOutputStream(file)) {
        new LargeFile(rows, 1, form).write(out);
      }
    }
    return file;
  }

  /** The same with every field between quotation marks. */
  private Path quoted(Path plain) throws IOException {
    Path file = folder.resolve("quoted10m.csv");
    if (!Files.exists(file)) {
      try (BufferedReader in = Files.newBufferedReader(plain);
          BufferedWriter out = Files.newBufferedWriter(file)) {
        for (String line = in.readLine(); line != null; line = in.readLine()) {
          out.append('"').append(line.replace(",", "\",\"")).append("\"\n");
        }
      }
    }
    return file;
  }

  private List<String> analyse(Path file, Path structures) {
    return List.of(
        "java",
        "-jar",
        jar.toString(),
        "analyse",
        file.toString(),
        "--structures",
        structures.toString(),
        "--format",
        "json",
        "--zone",
        "UTC");
  }

  private static List<String> java(Class<?> main, String argument) {
    String path = System.getProperty("java.class.path");
    return List.of("java", "-cp", path, main.getName(), argument);
  }

  private void time(String name, List<String> command) {
    Timed timed = Timed.run(command, output(name));
    times.computeIfAbsent(name, n -> new ArrayList<>()).add(timed);
    System.out.println(name + " " + timed);
  }

  private Path output(String name) {
    return folder.resolve(name + ".out");
  }

  private void report() throws IOException {
    System.out.printf("%n%-10s %8s %8s %8s%n", "median", "s", "cpu s", "peak MB");
    times.forEach(
        (name, all) -> {
          Timed median = median(all);
          System.out.printf(
              Locale.ROOT,
              "%-10s %8.2f %8.2f %8.0f%n",
              name,
              median.seconds(),
              median.cpuSeconds(),
              median.peakMb());
        });
    double ratio = seconds("duckdb10m") / seconds("long10m");
    System.out.printf(Locale.ROOT, "DuckDB takes %.2f times as long%n", ratio);
    double more = seconds("long1m") - seconds("bare");
    System.out.printf(Locale.ROOT, "1 million rows take %.2f s more than a bare start%n", more);
    Map<Integer, double[]> plain = Figures.ofAnalyse(output("long10m"));
    for (String other : List.of("quoted10m", "wide10m")) {
      double difference = Figures.difference(plain, Figures.ofAnalyse(output(other)));
      System.out.println("figures of " + other + " differ by at most " + difference);
    }
    double difference = Figures.difference(plain, Figures.ofDuckDb(output("duckdb10m")));
    System.out.println("figures of DuckDB differ by at most " + difference);
  }

  private double seconds(String name) {
    return median(times.getOrDefault(name, List.of())).seconds();
  }

  /** Medians of the times, and the highest peak. */
  private static Timed median(List<Timed> all) {
    double seconds = middle(all.stream().mapToDouble(Timed::seconds).toArray());
    double cpuSeconds = middle(all.stream().mapToDouble(Timed::cpuSeconds).toArray());
    double peakMb = all.stream().mapToDouble(Timed::peakMb).max().orElse(0);
    return new Timed(seconds, cpuSeconds, peakMb);
  }

  private static double middle(double[] values) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    return sorted[sorted.length / 2];
  }
}
