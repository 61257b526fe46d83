package cistern.architecture;

import com.sun.source.tree.CompilationUnitTree;
import com.sun.source.util.JavacTask;
import com.sun.source.util.Trees;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.BiConsumer;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.tools.JavaCompiler;
import javax.tools.JavaFileObject;
import javax.tools.StandardJavaFileManager;
import javax.tools.ToolProvider;

/**
 * The rules that can only be read from sources. Each gives the list of all places that break it;
 * the caller decides to fail.
 */
final class SourceRules {

  /** House style, rule 14, the hard stop. */
  private static final int FILE_LINES = 400;

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

  /** File names that stand in two packages: a reader must not have to ask which one is meant. */
  static List<String> checkNames(List<Path> sources) {
    return sources.stream()
        .filter(file -> !file.endsWith("package-info.java"))
        .collect(Collectors.groupingBy(file -> file.getFileName().toString()))
        .values()
        .stream()
        .filter(same -> same.size() > 1)
        .map(same -> same + ": one name for two types")
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

  /** Modules with code and without a test: coverage would not be measured there at all. */
  static List<String> checkTested(List<Path> modules) {
    return modules.stream()
        .filter(module -> Files.isDirectory(module.resolve("src/main/java")))
        .filter(module -> !Files.isDirectory(module.resolve("src/test/java")))
        .map(module -> module + " has code and no tests")
        .toList();
  }

  /** Methods and constructors that are too long or ask for too much. */
  static List<String> checkMethods(List<Path> sources) throws IOException {
    List<String> violations = new ArrayList<>();
    read(sources, (unit, trees) -> new MethodSizes(unit, trees).scan(unit, violations));
    return violations;
  }

  /** Types that do not say what they are, and public methods of public types that do not either. */
  static List<String> checkComments(List<Path> sources) throws IOException {
    List<String> violations = new ArrayList<>();
    read(sources, (unit, trees) -> new Comments(unit, trees).scan(unit, violations));
    return violations;
  }

  private static void read(List<Path> sources, BiConsumer<CompilationUnitTree, Trees> reader)
      throws IOException {
    JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
    try (StandardJavaFileManager files = compiler.getStandardFileManager(null, null, null)) {
      Iterable<? extends JavaFileObject> units = files.getJavaFileObjectsFromPaths(sources);
      JavacTask task =
          (JavacTask) compiler.getTask(null, files, null, List.of("-proc:none"), null, units);
      Trees trees = Trees.instance(task);
      for (CompilationUnitTree unit : task.parse()) {
        reader.accept(unit, trees);
      }
    }
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
}
