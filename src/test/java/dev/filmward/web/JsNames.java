package dev.filmward.web;

import dev.filmward.web.JsPiece.Group;
import dev.filmward.web.JsPiece.Text;
import dev.filmward.web.JsPiece.Word;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * What the names of a module stand for: constants, also of the modules that it imports, parameters
 * of functions by their calls, parameters of callbacks by the list they go through. An empty answer
 * means that the sources do not say.
 */
final class JsNames {
  /** Of a list: each of its members. */
  private static final Set<String> EACH =
      Set.of("map", "flatMap", "forEach", "filter", "find", "some", "every");

  /** They leave the members as they are. */
  private static final Set<String> SAME = Set.of("filter", "slice", "sort", "reverse");

  private final Path module;
  private final List<JsSpot> spots;

  JsNames(Path module) {
    this.module = module;
    try {
      spots = JsSpot.of(Files.readString(module));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  List<JsSpot> spots() {
    return spots;
  }

  /** The expressions that a name stands for where it is used. */
  List<JsExpr> valuesOf(String name, JsSpot at) {
    for (@Nullable JsSpot spot = at; spot != null; spot = spot.within()) {
      Optional<List<JsExpr>> found = asParameter(name, spot);
      if (found.isEmpty()) {
        found = declared(name, spot);
      }
      if (found.isPresent()) {
        return found.get();
      }
    }
    return imported(name);
  }

  private Optional<List<JsExpr>> asParameter(String name, JsSpot spot) {
    for (int i = spot.index() - 1; i >= spot.start(); i--) {
      JsSpot before = new JsSpot(spot.around(), i, spot.within());
      if (JsPiece.is(before.piece(), "=>") && i > 0) {
        JsSpot parameters = new JsSpot(spot.around(), i - 1, spot.within());
        Optional<List<JsExpr>> found = ofArrow(name, parameters);
        if (found.isPresent()) {
          return found;
        }
      }
    }
    boolean hasHead =
        spot.piece() instanceof Group body
            && body.open() == '{'
            && spot.beside(-1).filter(Group.class::isInstance).isPresent();
    return hasHead
        ? ofHead(name, new JsSpot(spot.around(), spot.index() - 1, spot.within()))
        : Optional.empty();
  }

  /** Of {@code function f(a, b)} by its calls, of {@code for (const a of list)} by its list. */
  private Optional<List<JsExpr>> ofHead(String name, JsSpot head) {
    if (head.isBeside(-1, "for")) {
      JsExpr loop = JsExpr.all(((Group) head.piece()).pieces(), head);
      return loop.is(2, "of")
          ? picked(name, loop.spot(1), listOf(loop.part(3, loop.size())))
          : Optional.empty();
    }
    boolean isFunction = head.isBeside(-2, "function");
    return isFunction && head.beside(-1).orElseThrow() instanceof Word function
        ? ofCalls(name, head, function.text(), head.isBeside(-3, "export"))
        : Optional.empty();
  }

  private Optional<List<JsExpr>> ofArrow(String name, JsSpot parameters) {
    JsSpot call = parameters.within();
    boolean isCallback =
        call != null
            && parameters.index() == 0
            && call.beside(-1).filter(JsNames::givesEach).isPresent()
            && call.isBeside(-2, ".");
    if (isCallback) {
      JsExpr receiver = receiverOf(call);
      JsSpot first =
          parameters.piece() instanceof Group
              ? JsExpr.partsOf(parameters).stream()
                  .findFirst()
                  .map(p -> p.spot(0))
                  .orElse(parameters)
              : parameters;
      Optional<List<JsExpr>> found = picked(name, first, listOf(receiver));
      return found.isPresent() || !binds(name, parameters) ? found : Optional.of(List.of());
    }
    if (parameters.isBeside(-1, "=") && parameters.beside(-2).orElseThrow() instanceof Word named) {
      return ofCalls(name, parameters, named.text(), parameters.isBeside(-4, "export"));
    }
    return binds(name, parameters) ? Optional.of(List.of()) : Optional.empty();
  }

  private static boolean givesEach(JsPiece piece) {
    return piece instanceof Word word && EACH.contains(word.text());
  }

  /** What stands before {@code .map(…)}. */
  private static JsExpr receiverOf(JsSpot call) {
    int end = call.index() - 2;
    int from = end - 1;
    while (from > 0 && isPartOfAName(call.around(), from)) {
      from--;
    }
    return new JsExpr(call.around(), from, end, call.within());
  }

  private static boolean isPartOfAName(List<JsPiece> around, int at) {
    JsPiece here = around.get(at);
    JsPiece before = around.get(at - 1);
    return JsPiece.is(here, ".")
        || JsPiece.is(before, ".")
        || (here instanceof Group group && group.open() == '(' && before instanceof Word);
  }

  private Optional<List<JsExpr>> ofCalls(
      String name, JsSpot parameters, String function, boolean isExported) {
    List<JsExpr> heads =
        parameters.piece() instanceof Group
            ? JsExpr.partsOf(parameters)
            : List.of(
                new JsExpr(
                    parameters.around(),
                    parameters.index(),
                    parameters.index() + 1,
                    parameters.within()));
    for (int i = 0; i < heads.size(); i++) {
      if (binds(name, heads.get(i).spot(0))) {
        boolean isPlain = heads.get(i).is(0, name);
        return Optional.of(isPlain && !isExported ? arguments(function, i) : List.of());
      }
    }
    return Optional.empty();
  }

  /** Each argument that a function gets there; none where one of its uses does not say. */
  private List<JsExpr> arguments(String function, int place) {
    List<JsExpr> found = new ArrayList<>();
    for (JsSpot spot : spots) {
      boolean isUse =
          JsPiece.is(spot.piece(), function)
              && !spot.isBeside(-1, ".")
              && !spot.isBeside(-1, "function")
              && !spot.isBeside(1, "=")
              && !spot.isBeside(1, ":");
      if (!isUse) {
        continue;
      }
      List<JsExpr> given =
          spot.beside(1).filter(next -> next instanceof Group g && g.open() == '(').isPresent()
              ? JsExpr.partsOf(new JsSpot(spot.around(), spot.index() + 1, spot.within()))
              : List.of();
      if (given.size() <= place) {
        return List.of();
      }
      found.add(given.get(place));
    }
    return found;
  }

  private Optional<List<JsExpr>> declared(String name, JsSpot spot) {
    List<JsPiece> around = spot.around();
    for (int i = 0; i + 2 < around.size(); i++) {
      boolean isConstant = JsPiece.is(around.get(i), "const") && JsPiece.is(around.get(i + 2), "=");
      if (isConstant && JsPiece.is(around.get(i + 1), name)) {
        int end = i + 3;
        while (end < around.size() && !JsSpot.endsAStretch(around.get(end))) {
          end++;
        }
        return Optional.of(List.of(new JsExpr(around, i + 3, end, spot.within())));
      }
      if (isConstant && binds(name, new JsSpot(around, i + 1, spot.within()))) {
        return Optional.of(List.of());
      }
    }
    return Optional.empty();
  }

  private List<JsExpr> imported(String name) {
    for (JsSpot spot : spots) {
      boolean isImport = spot.isBeside(-1, "from") && spot.piece() instanceof Text;
      if (isImport && binds(name, new JsSpot(spot.around(), spot.index() - 2, null))) {
        JsNames other = new JsNames(module.resolveSibling(((Text) spot.piece()).words()));
        return other.declared(name, other.spots.get(0)).orElse(List.of());
      }
    }
    return List.of();
  }

  /** The members of a list, the properties of an object. */
  List<JsExpr> listOf(JsExpr expression) {
    if (expression.isGroup(0, '[') || expression.isGroup(0, '{')) {
      return expression.size() == 1 || isLeftAsItIs(expression)
          ? membersOf(expression.spot(0))
          : List.of();
    }
    if (expression.is(0, "Object") && expression.isGroup(3, '(')) {
      return ofObject(expression);
    }
    if (expression.size() == 0 || !(expression.piece(0) instanceof Word word)) {
      return List.of();
    }
    return expression.size() == 1 || isLeftAsItIs(expression)
        ? valuesOf(word.text(), expression.spot(0)).stream()
            .flatMap(v -> listOf(v).stream())
            .toList()
        : List.of();
  }

  /** Of {@code Object.keys(words)} and the like; an entry stays a property. */
  private List<JsExpr> ofObject(JsExpr call) {
    return JsExpr.partsOf(call.spot(3)).stream()
        .flatMap(object -> listOf(object).stream())
        .map(
            property ->
                call.is(2, "keys")
                    ? keyOf(property)
                    : call.is(2, "values") ? valueOfProperty(property) : property)
        .toList();
  }

  private static JsExpr keyOf(JsExpr property) {
    return property.piece(0) instanceof Word word
        ? JsExpr.all(List.of(new Text(List.of(word.text()), List.of(), word.line())), null)
        : property.part(0, 1);
  }

  private static boolean isLeftAsItIs(JsExpr expression) {
    return expression.size() == 4
        && expression.is(1, ".")
        && expression.piece(2) instanceof Word word
        && SAME.contains(word.text());
  }

  private List<JsExpr> membersOf(JsSpot brackets) {
    List<JsExpr> members = new ArrayList<>();
    for (JsExpr part : JsExpr.partsOf(brackets)) {
      if (part.is(0, "...")) {
        members.addAll(listOf(part.part(1, part.size())));
      } else {
        members.add(part);
      }
    }
    return members;
  }

  /** The value of {@code name: value}, or the expression itself. */
  static JsExpr valueOfProperty(JsExpr property) {
    return property.is(1, ":") ? property.part(2, property.size()) : property;
  }

  /** What a name takes of each member; empty where it is not among what the parameter names. */
  private Optional<List<JsExpr>> picked(String name, JsSpot parameter, List<JsExpr> members) {
    if (JsPiece.is(parameter.piece(), name)) {
      return Optional.of(members);
    }
    if (!binds(name, parameter)) {
      return Optional.empty();
    }
    List<JsExpr> names = JsExpr.partsOf(parameter);
    List<JsExpr> found = new ArrayList<>();
    for (JsExpr member : members) {
      for (int i = 0; i < names.size(); i++) {
        if (names.get(i).is(names.get(i).size() - 1, name)) {
          Optional<JsExpr> one = partOf(member, i, names.get(i));
          if (one.isEmpty()) {
            return Optional.of(List.of());
          }
          found.add(one.get());
        }
      }
    }
    return Optional.of(found);
  }

  private static Optional<JsExpr> partOf(JsExpr member, int place, JsExpr named) {
    if (member.is(1, ":")) {
      return Optional.of(place == 0 ? keyOf(member) : valueOfProperty(member));
    }
    if (member.size() != 1 || !(member.piece(0) instanceof Group group)) {
      return Optional.empty();
    }
    List<JsExpr> parts = JsExpr.partsOf(member.spot(0));
    return group.open() == '['
        ? parts.stream().skip(place).findFirst()
        : parts.stream()
            .filter(part -> sameName(part, named))
            .findFirst()
            .map(JsNames::valueOfProperty);
  }

  private static boolean sameName(JsExpr part, JsExpr named) {
    return named.piece(0) instanceof Word word && part.is(0, word.text());
  }

  /** Whether a name is among those that a parameter, a list of them or an import gives. */
  private static boolean binds(String name, JsSpot parameter) {
    if (!(parameter.piece() instanceof Group group)) {
      return JsPiece.is(parameter.piece(), name);
    }
    for (int i = 0; i < group.pieces().size(); i++) {
      if (binds(name, new JsSpot(group.pieces(), i, parameter))) {
        return true;
      }
    }
    return false;
  }
}
