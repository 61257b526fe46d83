package cistern.puncture.bleeding;

import cistern.fact.Fact;
import cistern.fact.FactValue;
import cistern.fact.Facts;
import cistern.measurement.Answer;
import cistern.puncture.drug.Dose;
import cistern.puncture.drug.DrugEntry;
import cistern.puncture.drug.Drugs;
import cistern.puncture.drug.TypedDrug;
import cistern.puncture.procedure.Anticoagulation;
import cistern.puncture.procedure.Antithrombotic;
import cistern.puncture.procedure.DoseClass;
import cistern.puncture.procedure.PuncturedPerson;
import cistern.puncture.procedure.ThreeValued;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/** What is taken, found in what was typed, and the class of each dose. */
public final class DrugCheck {

  private final Facts facts;

  private DrugCheck(Facts facts) {
    this.facts = facts;
  }

  /** The drugs and doses under some facts. */
  public static DrugCheck of(Facts facts) {
    return new DrugCheck(facts);
  }

  /** Everything typed as taken; of the treatments only what bears on a puncture. */
  public TakenDrugs check(Anticoagulation given, PuncturedPerson person) {
    List<TakenDrugs.Taken> all = new ArrayList<>();
    for (Antithrombotic taken : given.inUse()) {
      List<TypedDrug> typed = Drugs.of(facts).parse(taken.name());
      typed.forEach(t -> all.add(taken(t, taken, typed.size() == 1, person)));
    }
    TakenDrugs.names(person.beside().bedside().treatments())
        .flatMap(name -> Drugs.of(facts).parse(name).stream())
        .filter(t -> t.entry().filter(e -> e.isAntithrombotic() || e.isAskedAbout()).isPresent())
        .filter(t -> all.stream().noneMatch(a -> a.drug().entry().equals(t.entry())))
        .map(t -> taken(t, untimed(t.typed()), true, person))
        .forEach(all::add);
    return new TakenDrugs(given.antithrombotics().isPresent(), all);
  }

  private static Antithrombotic untimed(String name) {
    return new Antithrombotic(
        name,
        DoseClass.UNKNOWN,
        Optional.empty(),
        OptionalDouble.empty(),
        Antithrombotic.Level.UNKNOWN);
  }

  private TakenDrugs.Taken taken(
      TypedDrug typed, Antithrombotic given, boolean isAlone, PuncturedPerson person) {
    Dose dose =
        isAlone
            ? given.dose().map(d -> Drugs.of(facts).dose(d).or(typed.dose())).orElse(typed.dose())
            : typed.dose();
    TypedDrug drug = new TypedDrug(typed.typed(), typed.entry(), dose, typed.nearest());
    DoseClass known =
        given.doseClass() == DoseClass.UNKNOWN
            ? drug.entry().map(e -> doseClass(e, dose, person)).orElse(DoseClass.UNKNOWN)
            : given.doseClass();
    return new TakenDrugs.Taken(
        drug, given.recognised(drug.entry().map(DrugEntry::name).orElse(typed.typed()), known));
  }

  /** Low or high as the guidelines tell doses apart, where what was typed settles it. */
  private DoseClass doseClass(DrugEntry drug, Dose dose, PuncturedPerson person) {
    String row = "drug." + drug.name();
    Optional<Double> single = single(row, dose.amount());
    if (single.isEmpty()) {
      return DoseClass.UNKNOWN;
    }
    OptionalDouble perKg = number(row + ".low-day-per-kg");
    boolean isPerKg = dose.amount().isPerKg();
    if (isPerKg || perKg.isPresent()) {
      return perKg(row, single.get(), dose, person.kidney().weightKg());
    }
    OptionalDouble lowSingle = number(row + ".low-single");
    OptionalDouble lowDay = number(row + ".low-day");
    if (lowSingle.isPresent() && single.get() <= lowSingle.getAsDouble()) {
      return reduced(drug, person);
    }
    if (lowDay.isEmpty()) {
      return lowSingle.isPresent() ? DoseClass.HIGH : DoseClass.UNKNOWN;
    }
    if (single.get() > lowDay.getAsDouble()) {
      return DoseClass.HIGH;
    }
    return byDay(dose.times(), single.get(), lowDay.getAsDouble());
  }

  private static DoseClass byDay(OptionalDouble times, double single, double lowDay) {
    if (times.isEmpty()) {
      return DoseClass.UNKNOWN;
    }
    return times.getAsDouble() * single <= lowDay ? DoseClass.LOW : DoseClass.HIGH;
  }

  /** By international units a day and kilogram; a dose for each kilogram needs no weight. */
  private DoseClass perKg(String row, double single, Dose dose, OptionalDouble weightKg) {
    boolean isPerKg = dose.amount().isPerKg();
    double unit = number(row + ".units-per-mg").orElse(1);
    double limit = number(row + ".low-day-per-kg").orElse(facts.number("dose.lmwh.low-day-per-kg"));
    if (!isPerKg && weightKg.isEmpty()) {
      return DoseClass.UNKNOWN;
    }
    double each = single * unit / (isPerKg ? 1 : weightKg.getAsDouble());
    return each > limit ? DoseClass.HIGH : byDay(dose.times(), each, limit);
  }

  /** The amount of one dose in the unit of the table, where the typed unit can be brought to it. */
  private Optional<Double> single(String row, Dose.Amount amount) {
    Optional<String> unit = facts.find(row + ".dose-unit").map(f -> f.value().toText());
    if (amount.value().isEmpty() || unit.isEmpty()) {
      return Optional.empty();
    }
    double value = amount.value().getAsDouble();
    boolean isMilligrams = unit.get().equals("mg");
    OptionalDouble perMl = number(row + ".mg-per-ml");
    OptionalDouble perMg = number(row + ".units-per-mg");
    return switch (amount.unit()) {
      case MILLIGRAM -> isMilligrams ? Optional.of(value) : Optional.empty();
      case INTERNATIONAL_UNIT ->
          isMilligrams ? perMg.stream().mapToObj(u -> value / u).findFirst() : Optional.of(value);
      case MILLILITRE -> perMl.stream().mapToObj(m -> value * m).findFirst();
      case NONE -> bare(value, isMilligrams, perMl, perMg);
    };
  }

  /** A bare number is the label's: millilitres under 2, units from 1000, else as the table says. */
  private Optional<Double> bare(
      double value, boolean isMilligrams, OptionalDouble perMl, OptionalDouble perMg) {
    if (perMl.isPresent() && value < facts.number("dose.bare.millilitres-below")) {
      return Optional.of(value * perMl.getAsDouble());
    }
    boolean isUnits = value >= facts.number("dose.bare.units-from");
    if (isMilligrams && isUnits) {
      return perMg.stream().mapToObj(u -> value / u).findFirst();
    }
    return isMilligrams || isUnits ? Optional.of(value) : Optional.empty();
  }

  /**
   * A reduced dose is a full one for somebody old, light or with a high creatinine (two of three).
   */
  private DoseClass reduced(DrugEntry drug, PuncturedPerson person) {
    String key = "dose." + drug.name() + ".reduced.";
    if (facts.find(key + "age-from").isEmpty()) {
      return DoseClass.LOW;
    }
    double creatinine =
        facts.number(key + "creatinine-from") * facts.number("clearance.micromole-per-milligram");
    List<Answer> signs =
        Stream.of(
                ThreeValued.when(person.ageYears(), v -> v >= facts.number(key + "age-from")),
                ThreeValued.when(
                    person.kidney().weightKg(), v -> v < facts.number(key + "weight-below")),
                ThreeValued.when(person.kidney().creatinine(), v -> v >= creatinine))
            .toList();
    long yes = signs.stream().filter(Answer::isYes).count();
    long no = signs.stream().filter(a -> a == Answer.NO).count();
    return yes >= 2 ? DoseClass.HIGH : no >= 2 ? DoseClass.LOW : DoseClass.UNKNOWN;
  }

  private OptionalDouble number(String key) {
    Optional<Fact> fact = facts.find(key);
    return fact.isPresent() && fact.get().value() instanceof FactValue.Figure figure
        ? OptionalDouble.of(figure.value())
        : OptionalDouble.empty();
  }
}
