package dev.filmward.alarm;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * The whole table of IEC 62682 / ISA-18.2, figure "alarm state transition", without latching (from
 * memory; letters as there): A normal, B unacknowledged, C acknowledged, D returned unacknowledged,
 * G shelved, H suppressed by design, I out of service; "-" cannot happen. SIGNAL_AGAIN and that a
 * hold may follow on any state, a hold too, are ours.
 */
class AlarmStateTest {
  private static final String TABLE =
      """
                   A B C D G H I
      SIGNAL       B B - B G H I
      SIGNAL_AGAIN C - C - G H I
      RETURN       A D A D G H I
      ACKNOWLEDGE  - C - A - - -
      SHELVE       G G G G G G G
      TAKE_OUT     I I I I I I I
      SUPPRESS     H H H H H H H
      FREE_ACTIVE  - - - - B B B
      FREE_QUIET   - - - - A A A
      """;

  private record Cell(AlarmState from, AlarmEvent event, String to) {}

  @TestFactory
  Stream<DynamicTest> everyCell() {
    return cells().stream()
        .map(
            cell ->
                DynamicTest.dynamicTest(
                    cell.from + " on " + cell.event + " gives " + cell.to, () -> check(cell)));
  }

  @Test
  void theTableHasEveryStateAndEvent() {
    Set<String> pairs = new HashSet<>();
    cells().forEach(cell -> pairs.add(cell.from + " " + cell.event));
    assertThat(pairs).hasSize(AlarmState.values().length * AlarmEvent.values().length);
  }

  @Test
  void statesAreWrittenAsWords() {
    for (AlarmState state : AlarmState.values()) {
      assertThat(AlarmState.fromWord(state.word())).isEqualTo(state);
    }
    assertThatIllegalArgumentException().isThrownBy(() -> AlarmState.fromWord("latched"));
  }

  private static void check(Cell cell) {
    if (cell.to.equals("-")) {
      assertThatIllegalStateException()
          .isThrownBy(() -> cell.from.on(cell.event))
          .withMessageContaining(cell.from.word());
    } else {
      assertThat(cell.from.on(cell.event)).isEqualTo(state(cell.to));
    }
  }

  private static List<Cell> cells() {
    List<String> lines = TABLE.lines().toList();
    List<String> columns = words(lines.get(0));
    List<Cell> cells = new ArrayList<>();
    for (String line : lines.subList(1, lines.size())) {
      List<String> words = words(line);
      for (int i = 0; i < columns.size(); i++) {
        AlarmEvent event = AlarmEvent.valueOf(words.get(0));
        cells.add(new Cell(state(columns.get(i)), event, words.get(i + 1)));
      }
    }
    return cells;
  }

  private static List<String> words(String line) {
    return List.of(line.strip().split("\\s+", -1));
  }

  private static AlarmState state(String letter) {
    return switch (letter) {
      case "A" -> AlarmState.NORMAL;
      case "B" -> AlarmState.UNACKNOWLEDGED;
      case "C" -> AlarmState.ACKNOWLEDGED;
      case "D" -> AlarmState.RETURNED_UNACKNOWLEDGED;
      case "G" -> AlarmState.SHELVED;
      case "H" -> AlarmState.SUPPRESSED;
      case "I" -> AlarmState.OUT_OF_SERVICE;
      default -> throw new IllegalArgumentException(letter);
    };
  }
}
