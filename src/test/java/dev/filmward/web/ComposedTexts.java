package dev.filmward.web;

import com.sun.source.tree.BinaryTree;
import com.sun.source.tree.ConditionalExpressionTree;
import com.sun.source.tree.ExpressionTree;
import com.sun.source.tree.LiteralTree;
import com.sun.source.tree.MemberSelectTree;
import com.sun.source.tree.MethodInvocationTree;
import com.sun.source.tree.NewClassTree;
import com.sun.source.tree.ParenthesizedTree;
import com.sun.source.tree.Tree;
import com.sun.source.util.JavacTask;
import com.sun.source.util.TreeScanner;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import javax.tools.JavaCompiler;
import javax.tools.StandardJavaFileManager;
import javax.tools.ToolProvider;
import org.jspecify.annotations.Nullable;

/**
 * The texts that sources put together, as their compiler reads them: literals and what is joined to
 * them, with {@link #HOLE} where something else comes in. A choice between two texts within one
 * gives both.
 */
final class ComposedTexts {
  static final String HOLE = "{}";
  private static final Path SOURCES = Path.of("src/main/java/dev/filmward");
  private static final String FORMAT = "%[-+0,#(]*\\d*(?:\\.\\d+)?[sdfeg](?![a-z])";

  /**
   * A text.
   *
   * @param file where it is put together, as {@code diagnosis/Sentences}
   * @param isThrown whether an exception says it
   */
  record Composed(String file, String text, boolean isThrown) implements Comparable<Composed> {
    String room() {
      return file.substring(0, Math.max(0, file.lastIndexOf('/')));
    }

    @Override
    public int compareTo(Composed other) {
      int byFile = file.compareTo(other.file);
      return byFile != 0 ? byFile : text.compareTo(other.text);
    }
  }

  private ComposedTexts() {}

  /** All of them. */
  static Set<Composed> ofAllSources() {
    JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
    Set<Composed> found = new TreeSet<>();
    try (Stream<Path> files = Files.walk(SOURCES);
        StandardJavaFileManager manager = compiler.getStandardFileManager(null, null, null)) {
      List<Path> java = files.filter(file -> file.toString().endsWith(".java")).toList();
      JavacTask task =
          (JavacTask)
              compiler.getTask(
                  null, manager, null, List.of(), null, manager.getJavaFileObjectsFromPaths(java));
      for (var unit : task.parse()) {
        String file = SOURCES.relativize(Path.of(unit.getSourceFile().getName())).toString();
        new Scan(file.replace(".java", "").replace('\\', '/'), found).scan(unit, null);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return found;
  }

  /** Lengths are said as pages say them. */
  static String withMicrometres(String text) {
    return text.replaceAll("((?:[\\d}]|blank)[ \\u202f\\u00a0])um(?![\\w/])", "$1µm");
  }

  private static final class Scan extends TreeScanner<Void, Void> {
    private final String file;
    private final Set<Composed> found;

    private Scan(String file, Set<Composed> found) {
      this.file = file;
      this.found = found;
    }

    @Override
    public Void visitNewClass(NewClassTree made, Void nothing) {
      String type = made.getIdentifier().toString();
      boolean isThrown = type.matches("\\w*(Exception|Response|Refused|Fault)");
      for (ExpressionTree argument : made.getArguments()) {
        take(argument, isThrown);
      }
      scan(made.getClassBody(), null);
      return null;
    }

    @Override
    public Void visitBinary(BinaryTree tree, Void nothing) {
      return isText(tree) ? take(tree, false) : super.visitBinary(tree, null);
    }

    @Override
    public Void visitMethodInvocation(MethodInvocationTree call, Void nothing) {
      return format(call) == null ? super.visitMethodInvocation(call, null) : take(call, false);
    }

    @Override
    public Void visitLiteral(LiteralTree literal, Void nothing) {
      return isText(literal) ? take(literal, false) : null;
    }

    private Void take(ExpressionTree tree, boolean isThrown) {
      if (!isText(tree)) {
        scan(tree, null);
        return null;
      }
      for (String text : texts(tree)) {
        String line = text.replaceAll("^\n|\n$", "").replaceAll(FORMAT, HOLE);
        found.add(new Composed(file, withMicrometres(line), isThrown));
      }
      return null;
    }

    /** What a tree may say; where it is no text of ours, a hole, and what is in it is looked at. */
    private List<String> texts(ExpressionTree tree) {
      if (tree instanceof ParenthesizedTree inner) {
        return texts(inner.getExpression());
      }
      if (tree instanceof LiteralTree literal) {
        return List.of(String.valueOf(literal.getValue()));
      }
      if (tree instanceof BinaryTree both && isText(both)) {
        List<String> joined = new ArrayList<>();
        for (String left : texts(both.getLeftOperand())) {
          texts(both.getRightOperand()).forEach(right -> joined.add(left + right));
        }
        return joined;
      }
      if (tree instanceof ConditionalExpressionTree choice && isText(choice)) {
        scan(choice.getCondition(), null);
        List<String> either = new ArrayList<>(texts(choice.getTrueExpression()));
        either.addAll(texts(choice.getFalseExpression()));
        return either;
      }
      if (tree instanceof MethodInvocationTree call && format(call) != null) {
        String pattern = String.valueOf(format(call));
        call.getArguments().stream()
            .filter(argument -> !pattern.equals(literal(argument)))
            .forEach(argument -> scan(argument, null));
        return List.of(pattern.replaceAll(FORMAT, HOLE).replace("%%", "%"));
      }
      scan(tree, null);
      return List.of(HOLE);
    }

    private static boolean isText(Tree tree) {
      if (tree instanceof ParenthesizedTree inner) {
        return isText(inner.getExpression());
      }
      if (tree instanceof LiteralTree literal) {
        return literal.getValue() instanceof String;
      }
      if (tree instanceof ConditionalExpressionTree choice) {
        return isText(choice.getTrueExpression()) || isText(choice.getFalseExpression());
      }
      if (tree instanceof MethodInvocationTree call) {
        return format(call) != null;
      }
      return tree instanceof BinaryTree both
          && both.getKind() == Tree.Kind.PLUS
          && (isText(both.getLeftOperand()) || isText(both.getRightOperand()));
    }

    /** The pattern of {@code "…".formatted(…)} or {@code String.format(…, "…", …)}, or null. */
    private static @Nullable String format(MethodInvocationTree call) {
      if (!(call.getMethodSelect() instanceof MemberSelectTree select)) {
        return null;
      }
      if (select.getIdentifier().contentEquals("formatted")) {
        return literal(select.getExpression());
      }
      if (!select.getIdentifier().contentEquals("format")) {
        return null;
      }
      return call.getArguments().stream()
          .limit(2)
          .map(Scan::literal)
          .filter(Objects::nonNull)
          .findFirst()
          .orElse(null);
    }

    private static @Nullable String literal(Tree tree) {
      if (tree instanceof ParenthesizedTree inner) {
        return literal(inner.getExpression());
      }
      if (tree instanceof LiteralTree one && one.getValue() instanceof String text) {
        return text;
      }
      if (tree instanceof BinaryTree both && both.getKind() == Tree.Kind.PLUS) {
        String left = literal(both.getLeftOperand());
        String right = literal(both.getRightOperand());
        return left == null || right == null ? null : left + right;
      }
      return null;
    }
  }
}
