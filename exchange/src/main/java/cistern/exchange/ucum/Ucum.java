package cistern.exchange.ucum;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.util.Optional;
import org.fhir.ucum.BaseUnit;
import org.fhir.ucum.Component;
import org.fhir.ucum.DefinedUnit;
import org.fhir.ucum.ExpressionParser;
import org.fhir.ucum.Factor;
import org.fhir.ucum.Operator;
import org.fhir.ucum.Symbol;
import org.fhir.ucum.Term;
import org.fhir.ucum.UcumException;
import org.fhir.ucum.UcumModel;
import org.fhir.ucum.definitions.XmlDefinitionsParser;

/**
 * Every unit of UCUM (unitsofmeasure.org, the essence file in the library). The library says what a
 * unit is made of; the factor is multiplied out here, because the library rounds, and reduces
 * arbitrary units and moles to plain numbers.
 */
final class Ucum {

  private static final String ESSENCE = "/ucum-essence.xml";

  /** Beyond any power that a unit has; a hostile power would cost time. */
  private static final int LARGEST_POWER = 99;

  private final UcumModel model;

  private Ucum(UcumModel model) {
    this.model = model;
  }

  /** Loads the definitions, which takes about as long as the rest of a start of the program. */
  static Ucum read() {
    try (InputStream in = UcumModel.class.getResourceAsStream(ESSENCE)) {
      if (in == null) {
        throw new IllegalStateException("no UCUM definitions in the library");
      }
      return new Ucum(new XmlDefinitionsParser().parse(in));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (UcumException e) {
      throw new IllegalStateException(e);
    }
  }

  /** The unit of a text; empty when it is no UCUM unit, or one whose scale is not proportional. */
  Optional<Unit> parse(String text) {
    try {
      return text.isEmpty() ? Optional.empty() : Optional.of(unit(term(text), 1));
    } catch (UcumException | IllegalArgumentException notAUnit) {
      return Optional.empty();
    }
  }

  private Term term(String text) throws UcumException {
    return new ExpressionParser(model).parse(text);
  }

  /** The product of a term's parts; what follows a division sign alone is divided by. */
  private Unit unit(Term first, int sign) throws UcumException {
    Unit product = Unit.ONE;
    int power = sign;
    for (Term term = first; term != null; term = term.getTerm()) {
      if (term.hasComp()) {
        product = product.times(unit(term.getComp()), power);
      }
      power = term.getOp() == Operator.DIVISION ? -sign : sign;
    }
    return product;
  }

  private Unit unit(Component part) throws UcumException {
    return switch (part) {
      case Factor factor ->
          new Unit(Ratio.of(BigDecimal.valueOf(factor.getValue())), Dimension.NONE);
      case Symbol symbol -> unit(symbol);
      case Term term -> unit(term, 1);
      default -> throw new IllegalArgumentException("a part of no known kind");
    };
  }

  private Unit unit(Symbol symbol) throws UcumException {
    if (Math.abs(symbol.getExponent()) > LARGEST_POWER) {
      throw new IllegalArgumentException("a power beyond any unit's");
    }
    Ratio prefix =
        symbol.hasPrefix()
            ? Ratio.of(new BigDecimal(symbol.getPrefix().getValue().asDecimal()))
            : Ratio.ONE;
    Unit unit = unit(symbol.getUnit());
    return Unit.ONE.times(
        new Unit(unit.factor().times(prefix), unit.dimension()), symbol.getExponent());
  }

  private Unit unit(org.fhir.ucum.Unit unit) throws UcumException {
    return switch (unit) {
      case BaseUnit base -> itself(base);
      case DefinedUnit defined when isIrreducible(defined) -> itself(defined);
      case DefinedUnit defined -> {
        Unit whole = unit(term(defined.getValue().getUnit()), 1);
        Ratio factor = Ratio.of(new BigDecimal(defined.getValue().getValue().asDecimal()));
        yield new Unit(whole.factor().times(factor), whole.dimension());
      }
      default -> throw new IllegalArgumentException("a unit of no known kind");
    };
  }

  private static Unit itself(org.fhir.ucum.Unit unit) {
    return new Unit(Ratio.ONE, Dimension.of(unit.getCode()));
  }

  /**
   * Whether a unit stands for itself: the mole, an arbitrary unit, which UCUM defines as a bare 1,
   * and one on a scale of its own (a temperature, a logarithm).
   */
  private static boolean isIrreducible(DefinedUnit unit) {
    return unit.isSpecial()
        || unit.getCode().equals(Dimension.MOLE)
        || (unit.getValue().getUnit().equals("1")
            && new BigDecimal(unit.getValue().getValue().asDecimal()).compareTo(BigDecimal.ONE)
                == 0);
  }
}
