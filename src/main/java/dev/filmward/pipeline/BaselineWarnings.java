package dev.filmward.pipeline;

import dev.filmward.stats.RunLengthSpread;
import dev.filmward.subgroup.Subgroup;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What speaks against relying on the limits of a baseline, in words. */
final class BaselineWarnings {
  /** With fewer subgroups limits are provisional at best (common practice, no source). */
  private static final int FEW = 100;

  private BaselineWarnings() {}

  static List<String> of(BaselineRows rows) {
    List<String> warnings = new ArrayList<>();
    int subgroups = rows.taken().size();
    if (subgroups < LimitsDesk.FEWEST) {
      warnings.add(
          subgroups + " samples are too few for limits; there must be " + LimitsDesk.FEWEST + ".");
      return warnings;
    }
    if (subgroups < FEW) {
      warnings.add(fewSubgroups(subgroups, size(rows)));
    }
    return warnings;
  }

  private static String fewSubgroups(int subgroups, int size) {
    RunLengthSpread spread = RunLengthSpread.of(subgroups, Math.max(2, size));
    return String.format(
        Locale.ROOT,
        "From %d samples, limits that should let 370 samples pass between false alarms let pass"
            + " anything from %.0f to %.0f (the middle eight of ten such baselines).",
        subgroups,
        spread.lower(),
        spread.upper());
  }

  private static int size(BaselineRows rows) {
    return rows.taken().stream()
        .map(row -> row.subgroup())
        .flatMap(Optional::stream)
        .mapToInt(Subgroup::size)
        .max()
        .orElse(2);
  }
}
