package cistern.architecture;

import com.sun.source.tree.ClassTree;
import com.sun.source.tree.CompilationUnitTree;
import com.sun.source.tree.LineMap;
import com.sun.source.tree.MethodTree;
import com.sun.source.tree.Tree;
import com.sun.source.util.SourcePositions;
import com.sun.source.util.TreePathScanner;
import com.sun.source.util.Trees;
import java.util.List;
import javax.lang.model.element.Modifier;
import org.jspecify.annotations.Nullable;

/** Walks one source file and notes the methods that break a hard stop of house style, rule 14. */
final class MethodSizes extends TreePathScanner<@Nullable Void, List<String>> {

  private static final int LINES = 40;

  private static final int PARAMETERS = 5;

  /** In private code, so that no bundle is made only to pass arguments. */
  private static final int PRIVATE_PARAMETERS = 7;

  private final CompilationUnitTree unit;
  private final SourcePositions positions;

  MethodSizes(CompilationUnitTree unit, Trees trees) {
    this.unit = unit;
    this.positions = trees.getSourcePositions();
  }

  @Override
  public @Nullable Void visitMethod(MethodTree method, List<String> violations) {
    LineMap map = unit.getLineMap();
    long first = map.getLineNumber(positions.getStartPosition(unit, bodyOf(method)));
    long lines = map.getLineNumber(positions.getEndPosition(unit, method)) - first + 1;
    String place = unit.getSourceFile().getName() + ":" + first + ": " + method.getName();
    if (lines > LINES) {
      violations.add(place + " has " + lines + " lines");
    }
    int parameters = method.getParameters().size();
    boolean isPrivate = method.getModifiers().getFlags().contains(Modifier.PRIVATE);
    if (parameters > (isPrivate ? PRIVATE_PARAMETERS : PARAMETERS) && !isOfRecord(method)) {
      violations.add(place + " has " + parameters + " parameters");
    }
    return super.visitMethod(method, violations);
  }

  /** Where a method's lines begin: a table of cases in an annotation above it is not its length. */
  private static Tree bodyOf(MethodTree method) {
    return method.getBody() == null ? method : method.getBody();
  }

  /** A record's own constructor repeats its components, which are not parameters of anybody's. */
  private boolean isOfRecord(MethodTree method) {
    return method.getReturnType() == null
        && getCurrentPath().getParentPath().getLeaf() instanceof ClassTree type
        && type.getKind() == Tree.Kind.RECORD;
  }
}
