package dev.filmward.simulate;

import dev.filmward.film.LengthUnit;
import dev.filmward.film.ReportedLayer;
import dev.filmward.film.Sample;
import dev.filmward.film.SampleKey;
import dev.filmward.film.Structure;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.regex.Pattern;

/**
 * A naive reader of exports without quoted fields, which shares no code with the writer: it splits
 * lines, guesses the separator from the header and takes five lanes for granted.
 */
final class ReadBack {
  private static final int LANES = 5;

  private final Structure structure;
  private final Map<SampleKey, double[][]> um = new LinkedHashMap<>();
  private final Map<SampleKey, Instant> times = new LinkedHashMap<>();
  private String[] header = {};
  private char separator;
  private int rows;
  private int readings;
  private int missing;
  private int quarantined;

  private ReadBack(Structure structure) {
    this.structure = structure;
  }

  static ReadBack of(SampleRun run) {
    return of(run.structure(), run.files().get("readings.csv"));
  }

  static ReadBack of(Structure structure, byte[] csv) {
    ReadBack back = new ReadBack(structure);
    Charset charset = csv[0] == (byte) 0xFF ? StandardCharsets.UTF_16LE : StandardCharsets.UTF_8;
    String text = new String(csv, charset).replace("\ufeff", "");
    List<String> lines = Arrays.asList(text.split("\r?\n"));
    back.separator = lines.get(0).contains(";") ? ';' : lines.get(0).contains("\t") ? '\t' : ',';
    back.header = back.split(lines.get(0));
    lines.subList(1, lines.size()).forEach(back::row);
    return back;
  }

  Counts counts() {
    return new Counts(rows, readings, missing, quarantined);
  }

  List<Sample> samples() {
    List<Sample> samples = new ArrayList<>();
    um.forEach(
        (key, values) ->
            samples.add(new Sample(key, times.get(key), new int[] {1, 2, 3, 4, 5}, values)));
    return samples;
  }

  private String[] split(String line) {
    return line.split(Pattern.quote(String.valueOf(separator)), -1);
  }

  private boolean isWide() {
    return !Arrays.asList(header).contains("layer");
  }

  private void row(String line) {
    rows++;
    String[] fields = split(line);
    int places = isWide() ? structure.reported().size() : 1;
    if (fields.length != header.length || !fields[5].matches("[1-9]")) {
      quarantined += places;
      return;
    }
    SampleKey key = new SampleKey(fields[1], fields[2], fields[3], fields[4]);
    Instant time = time(fields[0]);
    int lane = Integer.parseInt(fields[5]);
    for (int i = 0; i < places; i++) {
      int position = isWide() ? i + 1 : position(fields[6]);
      String cell = fields[isWide() ? 6 + i : 7];
      place(new Place(key, time, position, lane), cell, header[isWide() ? 6 + i : 7]);
    }
  }

  private record Place(SampleKey key, Instant time, int position, int lane) {}

  private void place(Place place, String cell, String heading) {
    if (List.of("", "-", "NaN").contains(cell)) {
      missing++;
      return;
    }
    OptionalDouble value = number(cell);
    if (place.position() == 0 || value.isEmpty()) {
      quarantined++;
      return;
    }
    readings++;
    times.putIfAbsent(place.key(), place.time());
    um.computeIfAbsent(place.key(), key -> nothing())[place.position() - 1][place.lane() - 1] =
        unit(heading).toUm(value.getAsDouble());
  }

  private double[][] nothing() {
    double[][] nothing = new double[structure.reported().size()][LANES];
    for (double[] row : nothing) {
      Arrays.fill(row, Double.NaN);
    }
    return nothing;
  }

  private static OptionalDouble number(String cell) {
    try {
      return OptionalDouble.of(Double.parseDouble(cell.replace(',', '.')));
    } catch (NumberFormatException e) {
      return OptionalDouble.empty();
    }
  }

  private static LengthUnit unit(String heading) {
    String unit = heading.replaceAll("^.*[_(]|\\)$", "");
    return LengthUnit.parse(unit).orElseThrow(() -> new IllegalArgumentException(heading));
  }

  private int position(String layer) {
    for (ReportedLayer reported : structure.reported()) {
      if (layer.equals(reported.name()) || layer.equals("" + reported.position())) {
        return reported.position();
      }
    }
    return 0;
  }

  private static Instant time(String text) {
    return text.length() > 19
        ? OffsetDateTime.parse(text).toInstant()
        : LocalDateTime.parse(text).atZone(ZoneId.of("Europe/Berlin")).toInstant();
  }
}
