package dev.filmward.simulate;

import dev.filmward.film.Sample;
import dev.filmward.film.Structure;
import dev.filmward.film.StructureYaml;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * One run of film: what happened, the file that the gauge wrote of it, and what must be seen in it.
 * Immutable.
 */
public final class SampleRun {
  private final String folder;
  private final Story story;
  private final Recording recording;
  private final Account account;

  SampleRun(String folder, Story story, Recording recording, Account account) {
    this.folder = folder;
    this.story = story;
    this.recording = recording;
    this.account = account;
  }

  /**
   * The part of the story that is in the file, and how.
   *
   * @param faults spoiled rows by their number, from 1 for the first after the header
   */
  record Recording(int samples, CsvFormat format, Map<Integer, Fault> faults) {}

  /** The story in four lines, and the alarms that it must raise, all and only. */
  record Account(List<String> lines, List<ExpectedAlarm> alarms) {}

  /** Name of the run's folder. */
  public String folder() {
    return folder;
  }

  public String line() {
    return story.schedule().line();
  }

  public Structure structure() {
    return story.film().structure();
  }

  /** The samples that are in the file, before any row was spoiled. */
  public List<Sample> samples() {
    return story.samples(recording.samples());
  }

  /** A gauge that goes on where the file ends. */
  public SimulatedGauge gauge() {
    return SimulatedGauge.startingAt(story, recording.samples());
  }

  /** Content of the run's files by their name. */
  public Map<String, byte[]> files() {
    ByteArrayOutputStream readings = new ByteArrayOutputStream();
    Counts counts = write(readings);
    Map<String, byte[]> files = new LinkedHashMap<>();
    files.put("structures.yaml", utf8(StructureYaml.of(structure())));
    files.put("readings.csv", readings.toByteArray());
    files.put("story.md", utf8(String.join("\n", account.lines()) + "\n"));
    files.put("expected.yaml", utf8(new ExpectedYaml(this).of(account.alarms(), counts)));
    return files;
  }

  SampleRun withSeed(long seed) {
    return new SampleRun(folder, story.withSeed(seed), recording, account);
  }

  List<ExpectedAlarm> alarms() {
    return account.alarms();
  }

  private Counts write(ByteArrayOutputStream out) {
    try {
      return new GaugeExport(structure(), recording.format(), recording.faults())
          .write(samples(), out);
    } catch (IOException e) {
      throw new UncheckedIOException("memory refused to be written to", e);
    }
  }

  private static byte[] utf8(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }
}
