package dev.filmward.simulate;

import dev.filmward.film.Role;
import dev.filmward.film.SpecLimits;
import dev.filmward.film.Structure;
import dev.filmward.film.StructureYaml;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.time.Instant;

/**
 * Writes files of any length, fast, to see how long reading them takes: seven layers that stay in
 * control, five lanes, a sample each ten seconds and a roll each hour. In the long layout a row is
 * about 65 bytes.
 *
 * <p>Thicknesses are drawn from a table of 4096 normal numbers with a standard deviation of 2 % of
 * the layer, in steps of 1 nm. The same rows, seed and form give the same bytes on every JDK.
 *
 * @param rows after the header; the last sample may be cut short
 */
public record LargeFile(long rows, long seed, Form form) {
  private static final int LANES = 5;
  private static final int SAMPLES_PER_ROLL = 360;
  private static final int SECONDS_BETWEEN = 10;
  private static final Instant START = Instant.parse("2026-01-05T06:00:00Z");

  /** One reading a row, or one column a layer. */
  public enum Form {
    LONG,
    WIDE
  }

  /** What the files are of. */
  public static Structure structure() {
    return StructureDraft.of(
            "BENCH-7",
            "Seven layers to measure speed with",
            layer("Outer skin", Role.SKIN, 14),
            layer("Outer tie", Role.TIE, 3),
            layer("Outer core", Role.CORE, 6),
            layer("Barrier", Role.BARRIER, 4),
            layer("Inner core", Role.CORE, 6),
            layer("Inner tie", Role.TIE, 3),
            layer("Seal", Role.SEAL, 24))
        .reportedEach(SpecLimits.of(54, 60, 66));
  }

  /** The structure as a structures file. */
  public static String structuresYaml() {
    return StructureYaml.of(structure());
  }

  private static LayerDraft layer(String name, Role role, int targetUm) {
    return LayerDraft.of(name, role, "PE").individual(0.9 * targetUm, targetUm, 1.1 * targetUm);
  }

  /** Writes the file, flushes and leaves the stream open. */
  public void write(OutputStream out) throws IOException {
    int layers = structure().reported().size();
    int rowsPerLane = form == Form.LONG ? layers : 1;
    int rowsPerSample = LANES * rowsPerLane;
    BenchReadings readings = new BenchReadings(structure(), seed);
    FastRows lines = new FastRows(out);
    lines.text(header(layers));
    byte[] start = {};
    for (long row = 0; row < rows; row++) {
      int place = (int) (row % rowsPerSample);
      if (place == 0) {
        start = rowStart(row / rowsPerSample).getBytes(StandardCharsets.US_ASCII);
      }
      lines.begin(start, 1 + place / rowsPerLane);
      if (form == Form.LONG) {
        int position = 1 + place % rowsPerLane;
        lines.digit(position);
        lines.thickness(readings.thousandths(position));
      } else {
        for (int position = 1; position <= layers; position++) {
          lines.thickness(readings.thousandths(position));
        }
      }
      lines.end();
    }
    lines.flush();
  }

  private String header(int layers) {
    StringBuilder header = new StringBuilder("taken_at,line,structure,roll,sample,lane");
    if (form == Form.LONG) {
      header.append(",layer,thickness_um");
    } else {
      for (int position = 1; position <= layers; position++) {
        header.append(",layer_").append(position).append("_um");
      }
    }
    return header.append('\n').toString();
  }

  private static String rowStart(long sample) {
    return START.plusSeconds(SECONDS_BETWEEN * sample)
        + ",Blown 9,BENCH-7,R"
        + padded(sample / SAMPLES_PER_ROLL + 1, 6)
        + ",S"
        + padded(sample + 1, 7);
  }

  private static String padded(long number, int digits) {
    String text = Long.toString(number);
    return "0".repeat(Math.max(0, digits - text.length())) + text;
  }
}
