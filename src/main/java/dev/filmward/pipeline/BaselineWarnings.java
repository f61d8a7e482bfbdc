package dev.filmward.pipeline;

import dev.filmward.stats.AndersonDarling;
import dev.filmward.stats.RunLengthSpread;
import dev.filmward.subgroup.Subgroup;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What speaks against relying on the limits of a baseline, in words. */
final class BaselineWarnings {
  /** With fewer subgroups limits are provisional at best (common practice, no source). */
  private static final int FEW = 100;

  /** A test on each of several layers would else warn of chance (common practice, no source). */
  private static final double RARE = 0.005;

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
    notNormal(means(rows)).ifPresent(warnings::add);
    rows.trust().flatMap(BaselineTrust::warning).ifPresent(warnings::add);
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

  private static Optional<String> notNormal(double[] means) {
    if (Arrays.stream(means).distinct().count() < 3) {
      return Optional.empty();
    }
    double p = AndersonDarling.of(means).p();
    return p < RARE
        ? Optional.of(
            String.format(
                Locale.ROOT,
                "The sample means are not normal (Anderson-Darling, p %.4f): look for two levels,"
                    + " a trend or wild points before you rely on three sigma.",
                p))
        : Optional.empty();
  }

  private static double[] means(BaselineRows rows) {
    return rows.subgroups().stream().mapToDouble(Subgroup::mean).toArray();
  }

  private static int size(BaselineRows rows) {
    return rows.subgroups().stream().mapToInt(Subgroup::size).max().orElse(2);
  }
}
