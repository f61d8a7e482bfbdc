package dev.filmward.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The beginning of a file and what would be read of it. */
class FilePreviewTest {
  private static final String CSV =
      "operator;"
          + LongLayoutTest.HEADER.replace(',', ';')
          + "Kim;2026-11-25 09:30;L1;LID-60;R7;S12;3;2;4,25\n"
          + "Kim;2026-11-25 09:30;L1;LID-60;R7;S12;3;Barrier;\n"
          + "Kim;2026-11-25 09:30;L1;LID-60;R7;\"S;12\";3;4;4,25\n"
          + "Kim;2026-11-25 09:30;L1\n"
          + "Kim;2026-11-25 09:30;L1;LID-60;R7;S12;3;2;4,25;more;and more\n";

  private static FilePreview of(String csv, int rows) throws Exception {
    return FilePreview.of(
        new ByteArrayInputStream(csv.getBytes(StandardCharsets.UTF_8)),
        "readings.csv",
        Film.BOTH,
        Seen.PLANT,
        rows);
  }

  @Test
  void itShowsTheDialectAndWhatEachColumnHolds() throws Exception {
    Dialect dialect = of(CSV, 10).dialect();

    assertThat(dialect.describe())
        .isEqualTo("UTF-8, fields separated by semicolons, one reading a row, thickness in um");
    assertThat(dialect.columns())
        .extracting(Column::field)
        .containsExactly(
            Field.IGNORED,
            Field.TAKEN_AT,
            Field.LINE,
            Field.STRUCTURE,
            Field.ROLL,
            Field.SAMPLE,
            Field.LANE,
            Field.LAYER,
            Field.THICKNESS);
  }

  @Test
  void itShowsTheFirstRowsAsTheyAreSplit() throws Exception {
    List<List<String>> rows = of(CSV, 10).rows();

    assertThat(rows).hasSize(5);
    assertThat(rows.get(2))
        .containsExactly("Kim", "2026-11-25 09:30", "L1", "LID-60", "R7", "S;12", "3", "4", "4,25");
    assertThat(rows.get(3)).containsExactly("Kim", "2026-11-25 09:30", "L1");
    assertThat(rows.get(4)).hasSize(10).endsWith("4,25", "more");
  }

  @Test
  void itCountsTheRowsLookedAtAndShowsWhatIsRejected() throws Exception {
    FilePreview preview = of(CSV, 4);

    assertThat(preview.count().rows()).isEqualTo(4);
    assertThat(preview.count().readings()).isEqualTo(1);
    assertThat(preview.count().missing()).isEqualTo(1);
    assertThat(preview.count().quarantined()).isEqualTo(2);
    assertThat(preview.count().notes())
        .containsExactly(
            "1 column ignored: \"operator\"",
            "times without an offset were read as local times of Europe/Berlin");
    assertThat(preview.rejections()).extracting(Rejection::line).containsExactly(4L, 5L);
  }

  @Test
  void itLooksNoFurtherThanAsked() throws Exception {
    assertThat(of(CSV, 0).rows()).isEmpty();
    assertThat(of(CSV, 0).count().rows()).isZero();
    assertThat(of(CSV, 1).rejections()).isEmpty();
  }

  @Test
  void longCellsAreCut() throws Exception {
    FilePreview preview = of(CSV.replace("Kim", "x".repeat(10_000)), 1);

    assertThat(preview.rows().get(0).get(0)).isEqualTo("x".repeat(200) + "…");
  }

  @Test
  void aFileThatIsRefusedHasNoPreview() {
    assertThatThrownBy(() -> of("a,b\n1,2\n", 10)).isInstanceOf(FileRefused.class);
  }
}
