package dev.filmward.gauge.study;

import dev.filmward.stats.AnovaTable;
import dev.filmward.stats.AnovaTable.Part;
import dev.filmward.stats.CrossedAnova;
import dev.filmward.stats.FisherF;
import dev.filmward.stats.Moments;
import dev.filmward.stats.OneWayAnova;
import java.util.Optional;

/**
 * The analysis of variance of one layer's study, in um². The four parts add up to the total whether
 * or not the interaction is pooled. Immutable.
 *
 * <p>The interaction is tested against the repeatability. Where its p exceeds 0.25 both are pooled
 * into one error, and part and operator are tested against that; else against the interaction. With
 * one operator there is neither operator nor interaction, and the part is tested against the
 * repeatability.
 *
 * <p>Source: the two-way random model of D. C. Montgomery, Design and Analysis of Experiments, 8th
 * ed. (2013), section 13.3; pooling above 0.25 as in AIAG, Measurement Systems Analysis, 4th ed.
 * (2010), appendix A (from memory).
 *
 * @param repeatability what repeats of one part by one operator differ by, before any pooling
 * @param error what part and operator are tested against where the interaction is pooled, else the
 *     repeatability
 */
public record StudyAnova(
    Line part,
    Optional<Line> operator,
    Optional<Line> interaction,
    Part repeatability,
    Pooling pooling,
    Part error) {
  private static final double POOLED_ABOVE = 0.25;

  /** Whether the interaction is part of the error. */
  public enum Pooling {
    POOLED,
    KEPT
  }

  /**
   * One part of the variation and its test.
   *
   * @param f ratio of its mean square to the one it is tested against
   * @param p probability of a greater ratio if there were no such effect
   */
  public record Line(Part part, double f, double p) {
    static Line of(Part part, Part against) {
      double f = part.meanSquare() / against.meanSquare();
      return new Line(part, f, new FisherF(part.degrees(), against.degrees()).above(f));
    }
  }

  public boolean isPooled() {
    return pooling == Pooling.POOLED;
  }

  /** Squares and degrees of all readings about their mean. */
  public Part total() {
    double squares = part.part().sumOfSquares() + repeatability.sumOfSquares();
    long degrees = part.part().degrees() + repeatability.degrees();
    if (operator.isPresent() && interaction.isPresent()) {
      Part operators = operator.get().part();
      Part interactions = interaction.get().part();
      squares += operators.sumOfSquares() + interactions.sumOfSquares();
      degrees += operators.degrees() + interactions.degrees();
    }
    return new Part(squares, degrees);
  }

  /** There must be some spread within the cells. */
  static StudyAnova of(CrossedReadings readings) {
    return readings.operators().size() == 1 ? oneWay(readings.um()) : twoWay(readings.um());
  }

  private static StudyAnova oneWay(double[][][] um) {
    OneWayAnova parts = new OneWayAnova();
    for (double[][] part : um) {
      Moments repeats = new Moments();
      for (double value : part[0]) {
        repeats.add(value);
      }
      parts.addGroup(repeats);
    }
    AnovaTable table = parts.table();
    return new StudyAnova(
        Line.of(table.between(), table.within()),
        Optional.empty(),
        Optional.empty(),
        table.within(),
        Pooling.KEPT,
        table.within());
  }

  private static StudyAnova twoWay(double[][][] um) {
    CrossedAnova table = CrossedAnova.of(um);
    Line interaction = Line.of(table.interaction(), table.within());
    boolean isPooled = interaction.p() > POOLED_ABOVE;
    Part error = isPooled ? sum(table.interaction(), table.within()) : table.within();
    Part against = isPooled ? error : table.interaction();
    return new StudyAnova(
        Line.of(table.rows(), against),
        Optional.of(Line.of(table.columns(), against)),
        Optional.of(interaction),
        table.within(),
        isPooled ? Pooling.POOLED : Pooling.KEPT,
        error);
  }

  private static Part sum(Part one, Part other) {
    return new Part(one.sumOfSquares() + other.sumOfSquares(), one.degrees() + other.degrees());
  }
}
