package dev.filmward.bench;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;

/**
 * A command that was run as a process of its own. Processor time and peak resident memory are read
 * from {@code /proc} every few milliseconds, so the last few may be missing; 0 where there is none.
 */
record Timed(double seconds, double cpuSeconds, double peakMb) {

  /** Runs a command with its output in a file; it must succeed. */
  static Timed run(List<String> command, Path output) {
    try {
      long start = System.nanoTime();
      Process process =
          new ProcessBuilder(command)
              .redirectOutput(output.toFile())
              .redirectError(output.resolveSibling(output.getFileName() + ".err").toFile())
              .start();
      double peakMb = 0;
      Duration cpu = Duration.ZERO;
      while (process.isAlive()) {
        peakMb = Math.max(peakMb, peakMb(process.pid()));
        cpu = process.info().totalCpuDuration().orElse(cpu);
        Thread.sleep(3);
      }
      double seconds = (System.nanoTime() - start) / 1e9;
      if (process.exitValue() != 0) {
        throw new IllegalStateException(command + " failed; see " + output);
      }
      return new Timed(seconds, cpu.toMillis() / 1e3, peakMb);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }

  private static double peakMb(long pid) {
    try {
      return Files.readAllLines(Path.of("/proc/" + pid + "/status")).stream()
          .filter(line -> line.startsWith("VmHWM:"))
          .mapToDouble(line -> Double.parseDouble(line.replaceAll("[^0-9]", "")) / 1024)
          .findFirst()
          .orElse(0);
    } catch (IOException e) {
      return 0;
    }
  }
}
