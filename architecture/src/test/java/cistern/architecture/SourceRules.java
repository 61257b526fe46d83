package cistern.architecture;

import com.sun.source.tree.ClassTree;
import com.sun.source.tree.CompilationUnitTree;
import com.sun.source.tree.LineMap;
import com.sun.source.tree.MethodTree;
import com.sun.source.tree.Tree;
import com.sun.source.util.JavacTask;
import com.sun.source.util.SourcePositions;
import com.sun.source.util.TreePathScanner;
import com.sun.source.util.Trees;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javax.lang.model.element.Modifier;
import javax.tools.JavaCompiler;
import javax.tools.StandardJavaFileManager;
import javax.tools.ToolProvider;
import org.jspecify.annotations.Nullable;

/**
 * The rules that can only be read from sources. Each gives the list of all places that break it;
 * the caller decides to fail.
 */
final class SourceRules {

  /** House style, rule 14, the hard stops. */
  private static final int FILE_LINES = 400;

  private static final int METHOD_LINES = 40;

  private static final int PARAMETERS = 5;

  /** Marks of unfinished work, written so that this file does not hold them. */
  private static final Pattern UNFINISHED =
      Pattern.compile("\\b(TO" + "DO|FIX" + "ME|X" + "XX)\\b");

  /** Folders of the machine that a file was written on. */
  private static final Pattern MACHINE = Pattern.compile("(?<![\\w.])/(work|root|home)/[a-z]");

  private SourceRules() {}

  static List<String> checkLength(List<Path> files) {
    return files.stream()
        .filter(file -> linesOf(file).size() > FILE_LINES)
        .map(file -> file + ": " + linesOf(file).size() + " lines, " + FILE_LINES + " are the most")
        .toList();
  }

  static List<String> checkUnfinished(List<Path> files) {
    return matching(files, UNFINISHED, "unfinished work");
  }

  static List<String> checkMachine(List<Path> files) {
    return matching(files, MACHINE, "a folder of somebody's machine");
  }

  /** Every folder with Java sources says what it is and that nothing in it is null. */
  static List<String> checkPackages(List<Path> sources) {
    return sources.stream()
        .map(Path::getParent)
        .distinct()
        .filter(folder -> !isDescribed(folder.resolve("package-info.java")))
        .map(folder -> folder + ": no package-info.java with a sentence and @NullMarked")
        .toList();
  }

  /** Methods and constructors that are too long or ask for too much. */
  static List<String> checkMethods(List<Path> sources) throws IOException {
    JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
    List<String> violations = new ArrayList<>();
    try (StandardJavaFileManager manager = compiler.getStandardFileManager(null, null, null)) {
      JavacTask task =
          (JavacTask)
              compiler.getTask(
                  null,
                  manager,
                  null,
                  List.of("-proc:none"),
                  null,
                  manager.getJavaFileObjectsFromPaths(sources));
      SourcePositions positions = Trees.instance(task).getSourcePositions();
      for (CompilationUnitTree unit : task.parse()) {
        new Methods(unit, positions).scan(unit, violations);
      }
    }
    return violations;
  }

  private static boolean isDescribed(Path file) {
    if (!Files.exists(file)) {
      return false;
    }
    String text = String.join("\n", linesOf(file));
    return text.contains("@NullMarked\npackage ") && text.startsWith("/**");
  }

  private static List<String> matching(List<Path> files, Pattern pattern, String trouble) {
    List<String> violations = new ArrayList<>();
    for (Path file : files) {
      List<String> lines = linesOf(file);
      for (int line = 0; line < lines.size(); line++) {
        if (pattern.matcher(lines.get(line)).find()) {
          violations.add(file + ":" + (line + 1) + ": " + trouble);
        }
      }
    }
    return violations;
  }

  static List<String> linesOf(Path file) {
    try (Stream<String> lines = Files.lines(file)) {
      return lines.toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Walks one source file and notes the methods that break a hard stop. */
  private static final class Methods extends TreePathScanner<@Nullable Void, List<String>> {

    private final CompilationUnitTree unit;
    private final SourcePositions positions;

    Methods(CompilationUnitTree unit, SourcePositions positions) {
      this.unit = unit;
      this.positions = positions;
    }

    @Override
    public @Nullable Void visitMethod(MethodTree method, List<String> violations) {
      LineMap map = unit.getLineMap();
      long first = map.getLineNumber(positions.getStartPosition(unit, method));
      long last = map.getLineNumber(positions.getEndPosition(unit, method));
      String place = unit.getSourceFile().getName() + ":" + first + ": " + method.getName();
      if (last - first + 1 > METHOD_LINES) {
        violations.add(place + " has " + (last - first + 1) + " lines");
      }
      if (method.getParameters().size() > PARAMETERS && !isRecordConstructor(method)) {
        violations.add(place + " has " + method.getParameters().size() + " parameters");
      }
      return super.visitMethod(method, violations);
    }

    /** A record's own constructor repeats its components, which are not parameters of anybody's. */
    private boolean isRecordConstructor(MethodTree method) {
      return method.getReturnType() == null
          && getCurrentPath().getParentPath().getLeaf() instanceof ClassTree type
          && type.getKind() == Tree.Kind.RECORD
          && !method.getModifiers().getFlags().contains(Modifier.PRIVATE);
    }
  }
}
