package dev.filmward.web;

import dev.filmward.web.JsPiece.Expression;
import dev.filmward.web.JsPiece.Group;
import dev.filmward.web.JsPiece.Sign;
import dev.filmward.web.JsPiece.Text;
import dev.filmward.web.JsPiece.Word;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Reads a module into {@link JsPiece}s: comments are left out, brackets and templates are nested.
 * It knows as much of the language as the modules in {@code web/app} use; what it cannot read it
 * refuses. For one source.
 */
final class JsReader {
  private static final Pattern BETWEEN = Pattern.compile("(?s)\\s+|//[^\\n]*|/\\*.*?\\*/");
  private static final Pattern WORD = Pattern.compile("\\d\\w*(?:\\.\\d+)?|[\\w$]+");
  private static final Pattern SIGN =
      Pattern.compile(
          "=>|===|!==|\\.\\.\\.|\\?\\?=?|\\?\\.(?!\\d)|&&|\\|\\||[-+*/%<>!=]=|\\*\\*|\\+\\+|--"
              + "|[-+*/%<>!=?:;,.&|^~@#]");
  private static final Pattern EXPRESSION =
      Pattern.compile("/(?:[^/\\\\\\[\\n]|\\\\.|\\[(?:[^\\]\\\\]|\\\\.)*])+/[a-z]*");

  /** After these a slash begins a regular expression. */
  private static final Set<String> BEFORE_AN_OPERAND =
      Set.of("return", "typeof", "case", "in", "of", "await", "throw", "else");

  private final String source;
  private int at;
  private int line = 1;
  private int counted;

  private JsReader(String source) {
    this.source = source;
  }

  static List<JsPiece> read(String source) {
    return new JsReader(source).piecesUntil("");
  }

  /** Reads up to a closing bracket, which stays, or to the end. */
  private List<JsPiece> piecesUntil(String close) {
    List<JsPiece> pieces = new ArrayList<>();
    while (true) {
      skip();
      if (at == source.length() || ")]}".indexOf(source.charAt(at)) >= 0) {
        if (!source.startsWith(close, at) || (at == source.length()) != close.isEmpty()) {
          throw fault("expected " + (close.isEmpty() ? "the end" : close));
        }
        return pieces;
      }
      pieces.add(piece(pieces));
    }
  }

  private JsPiece piece(List<JsPiece> before) {
    int begins = line();
    char c = source.charAt(at);
    int bracket = "([{".indexOf(c);
    if (bracket >= 0) {
      at++;
      List<JsPiece> inside = piecesUntil(")]}".substring(bracket, bracket + 1));
      at++;
      return new Group(c, inside, begins);
    }
    if (c == '\'' || c == '"' || c == '`') {
      return text(c, begins);
    }
    if (c == '/' && expectsAnOperand(before)) {
      taken(EXPRESSION);
      return new Expression(begins);
    }
    return Character.isLetterOrDigit(c) || c == '_' || c == '$'
        ? new Word(taken(WORD), begins)
        : new Sign(taken(SIGN), begins);
  }

  private static boolean expectsAnOperand(List<JsPiece> before) {
    if (before.isEmpty()) {
      return true;
    }
    JsPiece last = before.get(before.size() - 1);
    return last instanceof Sign || (last instanceof Word w && BEFORE_AN_OPERAND.contains(w.text()));
  }

  private Text text(char quote, int begins) {
    List<String> texts = new ArrayList<>();
    List<List<JsPiece>> holes = new ArrayList<>();
    StringBuilder words = new StringBuilder();
    for (at++; source.charAt(at) != quote; ) {
      if (quote == '`' && source.startsWith("${", at)) {
        texts.add(words.toString());
        words.setLength(0);
        at += 2;
        holes.add(piecesUntil("}"));
        at++;
      } else if (source.charAt(at) == '\\') {
        words.append(escaped());
      } else {
        words.append(source.charAt(at++));
      }
    }
    at++;
    texts.add(words.toString());
    return new Text(List.copyOf(texts), List.copyOf(holes), begins);
  }

  private String escaped() {
    char c = source.charAt(at + 1);
    at += 2;
    if (c == 'u') {
      at += 4;
      return Character.toString(Integer.parseInt(source, at - 4, at, 16));
    }
    int control = "nrt".indexOf(c);
    return String.valueOf(control < 0 ? c : "\n\r\t".charAt(control));
  }

  private void skip() {
    Matcher between = BETWEEN.matcher(source);
    while (between.region(at, source.length()).lookingAt()) {
      at = between.end();
    }
  }

  private String taken(Pattern pattern) {
    Matcher matcher = pattern.matcher(source).region(at, source.length());
    if (!matcher.lookingAt()) {
      throw fault("cannot read " + source.charAt(at));
    }
    at = matcher.end();
    return matcher.group();
  }

  private int line() {
    for (; counted < at; counted++) {
      line += source.charAt(counted) == '\n' ? 1 : 0;
    }
    return line;
  }

  private IllegalArgumentException fault(String what) {
    return new IllegalArgumentException("line " + line() + ": " + what);
  }
}
