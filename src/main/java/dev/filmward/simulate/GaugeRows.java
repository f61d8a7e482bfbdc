package dev.filmward.simulate;

import dev.filmward.film.ReportedLayer;
import dev.filmward.film.Sample;
import dev.filmward.film.SampleKey;
import dev.filmward.film.Structure;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/** Turns samples into rows of fields: lane by lane, layers from the outer face inwards. */
final class GaugeRows {
  private final Structure structure;
  private final CsvFormat format;

  GaugeRows(Structure structure, CsvFormat format) {
    this.structure = structure;
    this.format = format;
  }

  /**
   * A row before it is written.
   *
   * @param measured for each reading that the row has a place for, in order
   */
  record Row(List<String> fields, List<Boolean> measured) {}

  List<String> header() {
    List<String> fields =
        new ArrayList<>(List.of("taken_at", "line", "structure", "roll", "sample", "lane"));
    String unit = format.numerals().unit();
    if (!format.layout().isWide()) {
      fields.addAll(List.of("layer", "thickness_" + unit));
      return fields;
    }
    for (ReportedLayer layer : structure.reported()) {
      fields.add(
          format.layout().isByName()
              ? layer.name() + " (" + unit + ")"
              : "layer_" + layer.position() + "_" + unit);
    }
    return fields;
  }

  List<Row> rows(Sample sample) {
    List<Row> rows = new ArrayList<>();
    for (int lane = 0; lane < sample.laneCount(); lane++) {
      if (format.layout().isWide()) {
        rows.add(wide(sample, lane));
      } else {
        for (ReportedLayer layer : structure.reported()) {
          rows.add(row(sample, lane, Stream.of(layerField(layer)), List.of(layer)));
        }
      }
    }
    return rows;
  }

  private Row wide(Sample sample, int lane) {
    return row(sample, lane, Stream.empty(), structure.reported());
  }

  private Row row(Sample sample, int lane, Stream<String> named, List<ReportedLayer> layers) {
    SampleKey key = sample.key();
    List<String> fields = new ArrayList<>();
    fields.add(format.times().written(sample.takenAt()));
    fields.addAll(List.of(key.line(), key.structure(), key.roll(), key.sample()));
    fields.add(Integer.toString(sample.lane(lane)));
    named.forEach(fields::add);
    List<Boolean> measured = new ArrayList<>();
    for (ReportedLayer layer : layers) {
      measured.add(sample.isMeasured(layer.position(), lane));
      fields.add(cell(sample, layer.position(), lane));
    }
    return new Row(fields, measured);
  }

  private String cell(Sample sample, int position, int lane) {
    return sample.isMeasured(position, lane)
        ? format.numerals().written(sample.thicknessUm(position, lane))
        : format.numerals().missing();
  }

  private String layerField(ReportedLayer layer) {
    return format.layout().isByName() ? layer.name() : Integer.toString(layer.position());
  }
}
