package dev.filmward.intake.recognition;

import dev.filmward.intake.Mapping;
import java.util.List;
import java.util.Optional;

/**
 * A proposed mapping for a file, with reasons and questions. Immutable.
 *
 * @param yaml the mapping file, with the reasons as comments and {@code ?} where a question is open
 * @param columns what each column is taken for
 * @param rows the first rows as cells
 * @param reasons why each choice was made, in words
 * @param questions what only a person can know; those answered are among them no longer
 * @param mapping the mapping in the file; empty while a question is open
 */
public record Proposal(
    String yaml,
    List<ProposedColumn> columns,
    List<List<String>> rows,
    List<String> reasons,
    List<Question> questions,
    Optional<Mapping> mapping) {

  public Proposal {
    columns = List.copyOf(columns);
    rows = rows.stream().map(List::copyOf).toList();
    reasons = List.copyOf(reasons);
    questions = List.copyOf(questions);
  }

  /** How many first rows are shown. */
  public static final int FIRST_ROWS = 8;

  /**
   * A column of the file.
   *
   * @param name as the mapping calls it
   * @param meaning as answers write it
   * @param unit of a thickness; {@code ?} where it must be asked; else empty
   * @param examples the first cells that differ
   */
  public record ProposedColumn(
      String name, String meaning, String unit, String reason, List<String> examples) {
    public ProposedColumn {
      examples = List.copyOf(examples);
    }
  }
}
