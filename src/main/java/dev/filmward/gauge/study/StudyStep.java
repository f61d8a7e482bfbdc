package dev.filmward.gauge.study;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;

/**
 * One time that somebody couples the probe and reads all layers of a marked spot. Immutable.
 *
 * @param trial from 1
 */
public record StudyStep(String part, String operator, int trial) {

  public StudyStep {
    if (trial < 1) {
      throw new IllegalArgumentException("trials count from 1, not " + trial);
    }
  }

  /**
   * All steps of a plan in the order in which they are measured: trial by trial the operators in
   * random order, each of them all parts in random order, so that neither drift nor memory is taken
   * for a difference. The same seed gives the same order.
   *
   * <p>Source: random order within each operator and trial as in AIAG, Measurement Systems
   * Analysis, 4th ed. (2010), chapter III B (from memory); shuffled as in R. Durstenfeld, Algorithm
   * 235, Communications of the ACM 7 (1964) 420.
   */
  public static List<StudyStep> inOrder(StudyPlan plan) {
    Random random = new Random(plan.seed());
    List<StudyStep> steps = new ArrayList<>();
    for (int trial = 1; trial <= plan.trials(); trial++) {
      for (String operator : shuffled(plan.operators(), random)) {
        for (String part : shuffled(plan.parts(), random)) {
          steps.add(new StudyStep(part, operator, trial));
        }
      }
    }
    return List.copyOf(steps);
  }

  private static List<String> shuffled(List<String> names, Random random) {
    List<String> order = new ArrayList<>(names);
    Collections.shuffle(order, random);
    return order;
  }
}
