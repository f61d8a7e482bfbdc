package dev.filmward.pipeline;

import dev.filmward.store.FileEntry;
import dev.filmward.store.FileEntry.Counts;
import dev.filmward.store.QuarantinedRow;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/**
 * What became of a file, in words, for whoever looks into the folder that it went to. The counts
 * are of readings: rows x layers = readings + missing + quarantined.
 */
final class FileSummary {
  private static final int MOST_ROWS = 100;
  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm:ss xxx", Locale.ROOT);

  private FileSummary() {}

  static String of(Plant plant, FileEntry entry) {
    String head = head(entry, plant.zone());
    if (entry.refusal().isPresent()) {
      return head + "Refused, nothing was read: " + entry.refusal().get() + "\n";
    }
    return head
        + counts(entry.counts())
        + corrections(entry)
        + notes(entry)
        + quarantine(plant, entry);
  }

  private static String head(FileEntry entry, ZoneId zone) {
    return entry.name()
        + ", file "
        + entry.id()
        + ", "
        + TIME.format(entry.receivedAt().atZone(zone))
        + "\n";
  }

  private static String counts(Counts counts) {
    return """
        %d rows: %d readings, %d missing, %d in quarantine
        of the readings: %d new, %d known already, %d corrected
        """
        .formatted(
            counts.rows(),
            counts.readings(),
            counts.missing(),
            counts.quarantined(),
            counts.arrivals().fresh(),
            counts.arrivals().known(),
            counts.arrivals().corrected());
  }

  private static String corrections(FileEntry entry) {
    return entry.counts().arrivals().corrected() == 0
        ? ""
        : "the corrected values stay beside the new ones, as sent by: "
            + entry.sender().by()
            + "\n";
  }

  private static String notes(FileEntry entry) {
    return entry.notes().lines().map(note -> "Note: " + note + "\n").collect(Collectors.joining());
  }

  private static String quarantine(Plant plant, FileEntry entry) {
    if (entry.counts().quarantined() == 0) {
      return "";
    }
    List<QuarantinedRow> rows =
        plant.store().read(tables -> tables.files().quarantined(entry.id(), MOST_ROWS));
    long all = plant.store().read(tables -> tables.files().quarantinedRows(entry.id()));
    String listed = rows.stream().map(FileSummary::row).collect(Collectors.joining());
    String more = all > rows.size() ? "and " + (all - rows.size()) + " more rows\n" : "";
    return "\nIn quarantine (to mend them: the intake page, or filmward quarantine "
        + entry.id()
        + "):\n"
        + listed
        + more;
  }

  private static String row(QuarantinedRow row) {
    String where = row.column().isEmpty() ? "" : ", column " + row.column();
    String why = printable(row.reason());
    return "line " + row.line() + where + ": " + why + "\n    " + printable(row.raw()) + "\n";
  }

  /** Control characters from a file must not steer whatever shows the summary. */
  private static String printable(String text) {
    return text.replaceAll("[\\p{Cntrl}&&[^\t]]", "\uFFFD");
  }
}
