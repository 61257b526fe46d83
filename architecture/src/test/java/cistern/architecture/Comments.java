package cistern.architecture;

import com.sun.source.tree.ClassTree;
import com.sun.source.tree.CompilationUnitTree;
import com.sun.source.tree.MethodTree;
import com.sun.source.tree.Tree;
import com.sun.source.util.TreePathScanner;
import com.sun.source.util.Trees;
import java.util.List;
import javax.lang.model.element.Modifier;
import org.jspecify.annotations.Nullable;

/**
 * Walks one source file and notes what does not say what it is: types directly in the file, and the
 * public methods of public classes, records and enums that do not take their words from above.
 * House style, rule 16.
 */
final class Comments extends TreePathScanner<@Nullable Void, List<String>> {

  private final CompilationUnitTree unit;
  private final Trees trees;

  Comments(CompilationUnitTree unit, Trees trees) {
    this.unit = unit;
    this.trees = trees;
  }

  @Override
  public @Nullable Void visitClass(ClassTree type, List<String> violations) {
    if (getCurrentPath().getParentPath().getLeaf() instanceof CompilationUnitTree) {
      check(type, type.getSimpleName(), violations);
    }
    return super.visitClass(type, violations);
  }

  @Override
  public @Nullable Void visitMethod(MethodTree method, List<String> violations) {
    boolean inherits =
        method.getModifiers().getAnnotations().stream()
            .anyMatch(annotation -> annotation.getAnnotationType().toString().equals("Override"));
    if (isPublic(method) && !inherits && isInPublicType()) {
      check(method, method.getName(), violations);
    }
    return super.visitMethod(method, violations);
  }

  private boolean isInPublicType() {
    return getCurrentPath().getParentPath().getLeaf() instanceof ClassTree type
        && type.getModifiers().getFlags().contains(Modifier.PUBLIC);
  }

  private static boolean isPublic(MethodTree method) {
    return method.getModifiers().getFlags().contains(Modifier.PUBLIC);
  }

  private void check(Tree tree, CharSequence name, List<String> violations) {
    if (trees.getDocComment(getCurrentPath()) == null) {
      long line =
          unit.getLineMap().getLineNumber(trees.getSourcePositions().getStartPosition(unit, tree));
      violations.add(
          unit.getSourceFile().getName() + ":" + line + ": " + name + " does not say what it is");
    }
  }
}
