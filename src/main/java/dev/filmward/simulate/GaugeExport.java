package dev.filmward.simulate;

import dev.filmward.film.Sample;
import dev.filmward.film.Structure;
import dev.filmward.simulate.GaugeRows.Row;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * Writes samples as a gauge would export them, with chosen rows spoiled. Immutable.
 *
 * <p>A field that holds the separator, a quote or a line end is quoted as in RFC 4180.
 */
final class GaugeExport {
  private final GaugeRows rows;
  private final CsvFormat format;
  private final Map<Integer, Fault> faults;

  /**
   * @param faults by the number of the row, from 1 for the first after the header
   */
  GaugeExport(Structure structure, CsvFormat format, Map<Integer, Fault> faults) {
    this.rows = new GaugeRows(structure, format);
    this.format = format;
    this.faults = Map.copyOf(faults);
  }

  /** Writes a whole file, flushes and leaves the stream open. */
  Counts write(Iterable<Sample> samples, OutputStream out) throws IOException {
    Writer writer =
        new BufferedWriter(new OutputStreamWriter(out, format.text().encoding().charset()));
    writer.write(format.text().encoding().mark());
    writer.write(line(rows.header()));
    Tally tally = new Tally();
    for (Sample sample : samples) {
      for (Row row : rows.rows(sample)) {
        writer.write(line(tally.counted(row)));
      }
    }
    writer.flush();
    return tally.counts();
  }

  private String line(List<String> fields) {
    String separator = String.valueOf(format.text().separator());
    return fields.stream().map(this::quoted).collect(Collectors.joining(separator))
        + format.text().lineEnd().characters();
  }

  private String quoted(String field) {
    boolean isPlain =
        field.chars().noneMatch(c -> c == format.text().separator() || "\"\r\n".indexOf(c) >= 0);
    return isPlain ? field : '"' + field.replace("\"", "\"\"") + '"';
  }

  /** Spoils the rows that are to be spoiled, and counts. */
  private final class Tally {
    private int count;
    private long readings;
    private long missing;
    private long quarantined;

    List<String> counted(Row row) {
      count++;
      Fault fault = faults.get(count);
      int places = row.measured().size();
      int lost = fault == null ? 0 : fault.cost(places);
      int kept = (int) row.measured().stream().skip(lost).filter(measured -> measured).count();
      readings += kept;
      missing += places - lost - kept;
      quarantined += lost;
      return fault == null ? row.fields() : fault.spoiled(row.fields(), format.layout());
    }

    Counts counts() {
      return new Counts(count, readings, missing, quarantined);
    }
  }
}
