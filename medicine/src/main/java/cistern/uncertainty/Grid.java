package cistern.uncertainty;

/** A variable at the points of a quadrature rule, so that several sums over it share the values. */
final class Grid {

  private final LogNormal variable;
  private final NormalRule rule;
  private final double[] values;

  private Grid(LogNormal variable, NormalRule rule) {
    this.variable = variable;
    this.rule = rule;
    values = new double[rule.size()];
    for (int i = 0; i < values.length; i++) {
      values[i] = variable.at(rule.point(i));
    }
  }

  /** A variable that is the only one of a sum. */
  static Grid line(LogNormal variable) {
    return new Grid(variable, NormalRule.line(variable.sigma()));
  }

  /** A variable that is one of two of a sum. */
  static Grid plane(LogNormal variable) {
    return new Grid(variable, NormalRule.plane(variable.sigma()));
  }

  /** A variable at the points of a rule. */
  static Grid of(LogNormal variable, NormalRule rule) {
    return new Grid(variable, rule);
  }

  LogNormal variable() {
    return variable;
  }

  int size() {
    return values.length;
  }

  double value(int i) {
    return values[i];
  }

  /** The logarithm of the value at a point; the variable is not zero. */
  double log(int i) {
    return variable.mu() + variable.sigma() * rule.point(i);
  }

  double weight(int i) {
    return rule.weight(i);
  }
}
