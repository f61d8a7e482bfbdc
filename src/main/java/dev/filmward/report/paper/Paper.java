package dev.filmward.report.paper;

import java.time.Instant;
import java.util.List;

/**
 * A report as it is set on paper, in one language: what is read in order, and tables that only the
 * workbook has. Everything that varies comes from the report, so the same report gives the same
 * bytes. Immutable.
 *
 * @param head what runs at the top of each page
 * @param foot what runs at the bottom
 * @param at the moment of the report, which the files are dated by
 * @param behind tables for the workbook alone
 */
record Paper(
    Language language,
    String title,
    String subject,
    String head,
    String foot,
    Instant at,
    List<Block> blocks,
    List<Block.Table> behind) {
  Paper {
    blocks = List.copyOf(blocks);
    behind = List.copyOf(behind);
  }

  /** Those that are read, then those behind. */
  List<Block.Table> tables() {
    return java.util.stream.Stream.concat(
            blocks.stream().filter(Block.Table.class::isInstance).map(Block.Table.class::cast),
            behind.stream())
        .toList();
  }
}
