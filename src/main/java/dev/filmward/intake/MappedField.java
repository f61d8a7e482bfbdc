package dev.filmward.intake;

import java.util.List;
import java.util.stream.Collectors;

/**
 * One field of the rows of a mapped file: from columns, or the same for all rows. Must be shown
 * every row that can be split. One owner, one thread.
 */
final class MappedField {
  private final Source source;
  private final List<FieldMemo> memos;
  private String text;
  private boolean isNew = true;

  private MappedField(Source source, List<FieldMemo> memos, String text) {
    this.source = source;
    this.memos = memos;
    this.text = text;
  }

  static MappedField ofColumns(Source source, MappedColumns columns) {
    List<FieldMemo> memos =
        source.names().stream().map(name -> new FieldMemo(columns.index(name))).toList();
    return new MappedField(source, memos, "");
  }

  static MappedField always(Source source, String text) {
    return new MappedField(source, List.of(), source.meaning(text));
  }

  /** Whether the text differs from that of the row before. */
  boolean changes(Row row) {
    boolean changed = isNew;
    isNew = false;
    for (FieldMemo memo : memos) {
      changed |= memo.changes(row);
    }
    if (changed && !memos.isEmpty()) {
      String joined = memos.stream().map(memo -> memo.text(row)).collect(Collectors.joining(" "));
      text = source.meaning(HeadText.plain(joined));
    }
    return changed;
  }

  String text() {
    return text;
  }

  /** Index of the column that is named where it is at fault, or -1 where no column is. */
  int column() {
    return memos.isEmpty() ? -1 : memos.get(0).field();
  }
}
