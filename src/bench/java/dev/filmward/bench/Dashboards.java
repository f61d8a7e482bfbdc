package dev.filmward.bench;

import dev.filmward.access.TestPeople;
import dev.filmward.web.Api;
import dev.filmward.web.DashboardLoad;
import dev.filmward.web.DashboardLoad.Plan;
import dev.filmward.web.DashboardLoad.Report;
import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The packaged dashboard under load, as a process of its own on this machine, which also carries the
 * load: first page requests alone, then with 200 dashboards and 20 samples a second. Arguments: the
 * jar, an empty folder, seconds.
 */
public final class Dashboards {
  private static final Pattern ADDRESS = Pattern.compile("Open http://127\\.0\\.0\\.1:(\\d+)/");
  private static final int ALONE_S = 30;

  private Dashboards() {}

  public static void main(String[] args) throws Exception {
    Path folder = Files.createDirectories(Path.of(args[1]));
    int seconds = Integer.parseInt(args[2]);
    Path data = Files.createTempDirectory(folder, "data");
    var session = TestPeople.signedIn(data);
    Process server =
        new ProcessBuilder(
                "java", "-jar", args[0], "serve", "--data", data.toString(), "--port", "0")
            .redirectError(folder.resolve("messages.txt").toFile())
            .start();
    try {
      int port = port(server);
      String cookie = new Api(port).as(session).cookie();
      run(server, new DashboardLoad(port, Map.of("Cookie", cookie)), seconds);
    } finally {
      server.destroy();
      server.waitFor();
    }
  }

  private static void run(Process server, DashboardLoad load, int seconds) throws Exception {
    load.prepare();
    load.run(new Plan(20, 20, 50, 20));
    System.out.println("                        pages p50, p99 ms  sample p99 ms  event p50, p99, last ms");
    say("pages alone", load.run(new Plan(0, 0, 50, ALONE_S)));
    double early = liveMb(server);
    double resident = residentMb(server);
    double processorS = processorS(server);
    say("with the plant", load.run(new Plan(200, 20, 50, seconds)));
    System.out.printf(
        Locale.ROOT,
        "processor time of the server: %.2f s each second%n",
        (processorS(server) - processorS) / seconds);
    System.out.printf(
        Locale.ROOT,
        "live objects %.1f MB before, %.1f MB after; resident %.0f MB before, %.0f MB after%n",
        early,
        liveMb(server),
        resident,
        residentMb(server));
  }

  private static void say(String what, Report report) {
    System.out.printf(
        Locale.ROOT,
        "%-22s %9.1f %7.1f %14.1f %10.1f %7.1f %7.1f   failed %d, events missing %d of %d%n",
        what,
        report.answer(0.5),
        report.answer(0.99),
        report.sample(0.99),
        report.event(0.5),
        report.event(0.99),
        report.event(1),
        report.failed(),
        report.missing(),
        report.missing() + report.eventsMs().length);
  }

  private static int port(Process server) throws IOException {
    BufferedReader lines = server.inputReader(StandardCharsets.UTF_8);
    for (String line = lines.readLine(); line != null; line = lines.readLine()) {
      Matcher address = ADDRESS.matcher(line);
      if (address.find()) {
        return Integer.parseInt(address.group(1));
      }
    }
    throw new IllegalStateException("it ended without saying where it serves");
  }

  private static double processorS(Process server) {
    return server.info().totalCpuDuration().orElseThrow().toMillis() / 1000.0;
  }

  private static double residentMb(Process server) throws IOException {
    return Files.readAllLines(Path.of("/proc/" + server.pid() + "/status")).stream()
        .filter(line -> line.startsWith("VmRSS:"))
        .mapToDouble(line -> Double.parseDouble(line.replaceAll("[^0-9]", "")) / 1024)
        .findFirst()
        .orElse(0);
  }

  /** What is left after a collection. */
  private static double liveMb(Process server) throws Exception {
    Process histogram =
        new ProcessBuilder(List.of("jmap", "-histo:live", String.valueOf(server.pid()))).start();
    String text = new String(histogram.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    histogram.waitFor();
    String[] total = text.strip().substring(text.strip().lastIndexOf('\n') + 1).split(" +", -1);
    return Double.parseDouble(total[total.length - 1]) / (1 << 20);
  }
}
