package dev.filmward.cli;

import dev.filmward.chart.ChartKind;
import dev.filmward.pipeline.LinePrice;
import dev.filmward.rule.price.Price;
import dev.filmward.rule.price.PriceChange;
import java.util.Locale;

/** What tests cost in false alarms, for people. */
final class PriceWords {
  private PriceWords() {}

  static String of(LinePrice line) {
    StringBuilder words = new StringBuilder();
    words.append(
        String.format(
            Locale.ROOT,
            "%nThe price of these tests: %s, %s, %d means and ranges, a sample every %.0f min, a"
                + " shift of %d h.%n",
            line.line(),
            line.structure(),
            line.characteristics(),
            line.interval().toSeconds() / 60.0,
            LinePrice.SHIFT.toHours()));
    words.append(row("as they are", line.price()));
    for (PriceChange change : line.changes()) {
      String turn = change.turn() == PriceChange.Turn.DROPPED ? "without " : "with ";
      String chart = change.chart() == ChartKind.XBAR ? "" : " of the ranges";
      words.append(row(turn + change.test().word() + chart, change.price()));
    }
    return words.toString();
  }

  private static String row(String what, Price price) {
    return String.format(
        Locale.ROOT,
        "  %-36s %6.2f false signals a shift, one in %5.0f samples; a shift of one sigma is seen"
            + " after %5.1f samples%n",
        what,
        price.falseAlarmsPerShift(),
        price.samplesToFalseAlarm(),
        price.samplesToSeeOneSigma());
  }
}
