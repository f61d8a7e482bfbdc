package dev.filmward.report.paper.drawing;

/** How a number is written in the language of the paper. */
@FunctionalInterface
public interface Numbers {
  String text(double value, int decimals);
}
