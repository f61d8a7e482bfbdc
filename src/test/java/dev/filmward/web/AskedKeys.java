package dev.filmward.web;

import dev.filmward.web.JsPiece.Group;
import dev.filmward.web.JsPiece.Text;
import dev.filmward.web.JsPiece.Word;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * The keys that a module asks the rooms of the catalogues for.
 *
 * @param place the module and the line
 * @param room the room
 * @param keys what the key may be, with {@link JsValues#ANY} for what the module does not say
 * @param mayBeMissing whether the module has something else to say then
 */
record AskedKeys(String place, String room, Set<String> keys, boolean mayBeMissing) {

  /** All that a module asks for. */
  static List<AskedKeys> of(Path module) {
    JsNames names = new JsNames(module);
    JsValues values = new JsValues(names);
    List<AskedKeys> found = new ArrayList<>();
    for (JsSpot spot : names.spots()) {
      String room = roomAt(spot);
      if (!room.isEmpty()) {
        String speaker = ((Word) spot.piece()).text();
        for (JsSpot use : names.spots()) {
          int call = callOf(speaker, use);
          if (call > 0) {
            JsSpot arguments = new JsSpot(use.around(), use.index() + call, use.within());
            Set<String> keys = values.of(JsExpr.partsOf(arguments).get(0));
            String place = module.getFileName() + ":" + use.piece().line();
            found.add(new AskedKeys(place, room, keys, use.isBeside(2, "maybe")));
          }
        }
      }
    }
    return found;
  }

  /** The room of {@code t} in {@code const t = await room('alarms')}. */
  private static String roomAt(JsSpot spot) {
    boolean isSpeaker =
        spot.piece() instanceof Word
            && spot.isBeside(-1, "const")
            && spot.isBeside(1, "=")
            && spot.isBeside(2, "await")
            && spot.isBeside(3, "room");
    return isSpeaker
            && ((Group) spot.around().get(spot.index() + 4)).pieces().get(0) instanceof Text t
        ? t.words()
        : "";
  }

  /** How far behind a speaker its arguments stand; 0 where it is not asked. */
  private static int callOf(String speaker, JsSpot use) {
    if (!JsPiece.is(use.piece(), speaker) || use.isBeside(-1, ".")) {
      return 0;
    }
    int call = use.isBeside(1, ".") ? 3 : 1;
    return use.beside(call).filter(next -> next instanceof Group g && g.open() == '(').isPresent()
        ? call
        : 0;
  }

  /** Whether the module says nothing of the key. */
  boolean isOpen() {
    return keys.contains(JsValues.ANY);
  }

  /** Those that fit no key of the room. */
  Set<String> missing(Set<String> known) {
    Set<String> missing = new TreeSet<>(keys);
    missing.removeIf(key -> known.stream().anyMatch(fits(key).asMatchPredicate()));
    return mayBeMissing && missing.size() < keys.size() ? Set.of() : missing;
  }

  /** Whether it asks for a key of the room, by more than nothing. */
  boolean asksFor(String key) {
    return keys.stream()
        .filter(one -> !one.equals(JsValues.ANY))
        .anyMatch(one -> fits(one).matcher(key).matches());
  }

  private static Pattern fits(String key) {
    String pieces =
        Pattern.compile(JsValues.ANY, Pattern.LITERAL)
            .splitAsStream(key + JsValues.ANY + "end")
            .map(Pattern::quote)
            .collect(Collectors.joining(".+"));
    return Pattern.compile(pieces.substring(0, pieces.length() - ".+\\Qend\\E".length()));
  }
}
