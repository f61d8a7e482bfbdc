package dev.filmward.pipeline;

import dev.filmward.pipeline.Handover.Item;
import dev.filmward.pipeline.Handover.Part;
import dev.filmward.pipeline.Handover.Section;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * Something that is not as it was when a handover was signed.
 *
 * @param how {@code new}, {@code gone}, or the state before and after
 */
public record HandoverChange(Part part, Item item, String how) {

  /**
   * In the order of the sections. Parts that show the moment are left out, since they change by
   * themselves.
   */
  public static List<HandoverChange> between(List<Section> signed, List<Section> now) {
    List<HandoverChange> changes = new ArrayList<>();
    for (Section section : now) {
      if (!section.part().isOfTheMoment()) {
        Map<String, Item> before = byKey(items(signed, section.part()));
        Map<String, Item> after = byKey(section.items());
        after.forEach(
            (key, item) -> addNewOrChanged(section.part(), before.get(key), item, changes));
        before.forEach(
            (key, item) -> {
              if (!after.containsKey(key)) {
                changes.add(new HandoverChange(section.part(), item, "gone"));
              }
            });
      }
    }
    return changes;
  }

  private static void addNewOrChanged(
      Part part, @Nullable Item before, Item now, List<HandoverChange> changes) {
    if (before == null) {
      changes.add(new HandoverChange(part, now, "new"));
    } else if (!before.state().equals(now.state())) {
      changes.add(new HandoverChange(part, now, before.state() + " \u2192 " + now.state()));
    }
  }

  private static List<Item> items(List<Section> sections, Part part) {
    return sections.stream()
        .filter(section -> section.part() == part)
        .flatMap(section -> section.items().stream())
        .toList();
  }

  private static Map<String, Item> byKey(List<Item> items) {
    return items.stream()
        .collect(
            Collectors.toMap(
                Item::key, Function.identity(), (first, second) -> first, LinkedHashMap::new));
  }
}
