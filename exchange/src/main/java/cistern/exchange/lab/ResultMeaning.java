package cistern.exchange.lab;

import cistern.exchange.lab.Fluids.Fluid;
import cistern.exchange.lab.LeftOver.Why;
import cistern.exchange.lab.NumberText.Kind;
import cistern.exchange.lab.ReportedResult.Range;
import cistern.exchange.ucum.Spellings;
import cistern.measurement.Analyte;
import cistern.measurement.Compartment;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * What the results of a report mean. The specimen says which fluid it is, then the code; neither
 * fluid nor unit is ever guessed. What is not understood goes to the list of the left over.
 */
final class ResultMeaning {

  private static final WordTable ANSWERS = WordTable.read("answers.tsv");

  /** A pattern of bands, perhaps behind the answer that it means: {@code positive (type 2)}. */
  private static final Pattern PATTERN =
      Pattern.compile(
          "(?i)(?:(?<answer>\\p{L}[\\p{L} .]*?)\\s*[,;:(–-]?\\s*)??"
              + "(?:pattern|type|typ|muster)\\s*(?<number>[1-5])\\s*\\)?");

  /** The patterns with bands of the CSF's own (Andersson 1994). */
  private static final List<String> LOCAL = List.of("2", "3");

  private static final String TITRE = "{titer}";

  /** Of another number behind the first: a range, a power of ten. */
  private static final Pattern DIGIT = Pattern.compile("\\d");

  private final Spellings spellings;
  private final LocalMapping mapping;
  private final List<LeftOver> leftOver;

  ResultMeaning(Spellings spellings, LocalMapping mapping, List<LeftOver> leftOver) {
    this.spellings = spellings;
    this.mapping = mapping;
    this.leftOver = leftOver;
  }

  /** The result as it is understood; empty, and listed, when it is not. */
  Optional<ReadResult> read(ReportedResult result) {
    Optional<Meaning> meaning = meaning(result);
    if (meaning.isEmpty()) {
      return left(result, Why.UNKNOWN_CODE);
    }
    return switch (meaning.get().subject()) {
      case "ignore", "panel", "report", "section" -> Optional.empty();
      case "computed" -> left(result, Why.COMPUTED);
      case "appearance" ->
          Optional.of(
              new ReadResult(
                  result,
                  "appearance",
                  Optional.of(Compartment.CSF),
                  Optional.empty(),
                  "",
                  result.value()));
      default -> usable(result, meaning.get());
    };
  }

  /** Whether any code of a result is known. */
  boolean isKnown(ReportedResult result) {
    return meaning(result).isPresent();
  }

  private Optional<ReadResult> usable(ReportedResult result, Meaning meaning) {
    switch (result.standing()) {
      case CANCELLED -> {
        return left(result, Why.CANCELLED);
      }
      case AWAITED -> {
        return left(result, Why.AWAITED);
      }
      case FINAL, PRELIMINARY, AMENDED -> {
        if (result.value().isBlank()) {
          return left(result, Why.NO_VALUE);
        }
      }
    }
    if (meaning.subject().startsWith("bands.")) {
      return bands(result, meaning);
    }
    if (meaning.subject().startsWith("serology.")) {
      return serology(result, meaning);
    }
    Optional<Analyte> analyte = meaning.analyte();
    return analyte.isEmpty()
        ? left(result, Why.COMPUTED)
        : measured(result, meaning, analyte.get());
  }

  private Optional<ReadResult> left(ReportedResult result, Why why) {
    leftOver.add(LeftOver.of(result, why));
    return Optional.empty();
  }

  private Optional<Meaning> meaning(ReportedResult result) {
    return result.codes().stream()
        .flatMap(coding -> mapping.code(coding).stream())
        .findFirst()
        .or(() -> result.codes().stream().flatMap(c -> known(c).stream()).findFirst());
  }

  private static Optional<Meaning> known(Coding coding) {
    return switch (coding.system()) {
      case Coding.LOINC -> Loinc.find(coding.code()).map(code -> Meaning.parse(code.meaning()));
      case Coding.OWN -> Optional.of(Meaning.parse(coding.withoutTube()));
      default -> Optional.empty();
    };
  }

  private Optional<ReadResult> measured(ReportedResult result, Meaning meaning, Analyte analyte) {
    Optional<Compartment> in = fluid(result, meaning);
    if (in.isEmpty()) {
      return Optional.empty();
    }
    Optional<NumberText> number = NumberText.parse(result.value(), mapping.mark());
    boolean isTitre = number.filter(n -> n.kind() == Kind.TITRE).isPresent();
    if (number.isEmpty() || (isTitre && analyte.family() != Analyte.Family.SPECIFIC_ANTIBODY)) {
      boolean isComma = NumberText.trouble(result.value()) == NumberText.Trouble.COMMA_UNCLEAR;
      return left(result, isComma ? Why.COMMA_UNCLEAR : Why.VALUE_UNCLEAR);
    }
    String behind = number.get().rest();
    if (!result.unit().isBlank() && !behind.isEmpty() && !spellings.isUnit(behind)) {
      if (DIGIT.matcher(behind).find()) {
        return left(result, Why.VALUE_UNCLEAR);
      }
      leftOver.add(new LeftOver(result.place(), Why.NOTE, result.name(), behind, ""));
    }
    List<String> units = units(result, meaning, number.get());
    if (units.isEmpty()) {
      return left(result, Why.UNIT_MISSING);
    }
    Optional<String> unit = spellings.ucum(units.getFirst(), analyte);
    if (unit.isEmpty()) {
      return left(result, Why.UNIT_UNKNOWN);
    }
    if (units.stream().anyMatch(u -> spellings.isAgainst(u, unit.get()))) {
      leftOver.add(LeftOver.ofUnits(result, units));
      return Optional.empty();
    }
    ReportedResult ranged = withUsableRange(result, unit.get());
    return Optional.of(new ReadResult(ranged, analyte.code(), in, number, unit.get(), ""));
  }

  /** The units that are said, the one that counts first; else that of the mapping. */
  private List<String> units(ReportedResult result, Meaning meaning, NumberText number) {
    String behind = number.rest();
    if (behind.equals("%")) {
      return List.of(behind);
    }
    boolean isUnit = result.unit().isBlank() || spellings.isUnit(behind);
    List<String> said =
        Stream.of(Stream.of(result.unit()), result.remarks().units().stream(), Stream.of(behind))
            .flatMap(units -> units)
            .filter(u -> !u.isBlank() && (isUnit || !u.equals(behind)))
            .distinct()
            .toList();
    return !said.isEmpty()
        ? said
        : number.kind() == Kind.TITRE ? List.of(TITRE) : meaning.unit().stream().toList();
  }

  /** The result, without a range in another unit than its own, which is listed. */
  private ReportedResult withUsableRange(ReportedResult result, String unit) {
    Optional<Range> against =
        result
            .remarks()
            .range()
            .filter(r -> r.units().stream().anyMatch(u -> spellings.isAgainst(u, unit)));
    against.ifPresent(range -> leftOver.add(LeftOver.ofRange(result, range)));
    return against.isPresent() ? result.withoutRange() : result;
  }

  /** The fluid by the mapping, the specimen, then the code; empty, and listed, when unclear. */
  private Optional<Compartment> fluid(ReportedResult result, Meaning meaning) {
    List<String> words = result.specimen().words();
    Optional<Fluid> said = Fluids.of(words);
    Optional<Compartment> local = mapping.word(words).flatMap(Meaning::in);
    Optional<Compartment> bySpecimen = local.or(() -> said.flatMap(Fluid::compartment));
    if (local.isEmpty() && said.filter(f -> f == Fluid.OTHER).isPresent()) {
      left(result, Why.OTHER_SPECIMEN);
      return Optional.empty();
    }
    boolean isTube =
        said.filter(f -> f == Fluid.BLOOD || f == Fluid.PLASMA).isPresent()
            && meaning.in().filter(c -> c == Compartment.SERUM).isPresent();
    Optional<Compartment> in = isTube ? meaning.in() : bySpecimen.or(() -> unsaid(said, meaning));
    if (in.isEmpty()) {
      left(result, Why.SPECIMEN_UNCLEAR);
    } else if (meaning.in().isPresent() && !meaning.in().equals(in)) {
      left(result, Why.AGAINST_CODE);
    }
    return in;
  }

  /** The fluid of the code, unless the specimen is one that the code does not name. */
  private static Optional<Compartment> unsaid(Optional<Fluid> said, Meaning meaning) {
    return said.isPresent() ? Optional.empty() : meaning.in();
  }

  private Optional<ReadResult> bands(ReportedResult result, Meaning meaning) {
    String subject = meaning.subject();
    boolean isInSerum =
        Fluids.of(result.specimen().words()).filter(f -> f == Fluid.SERUM).isPresent();
    if (subject.equals("bands.result") && isInSerum) {
      return left(result, Why.UNKNOWN_CODE);
    }
    Optional<String> pattern = pattern(result.value().strip());
    if (pattern.isPresent() && List.of("bands.result", "bands.pattern").contains(subject)) {
      return Optional.of(band(result, "bands.pattern", pattern.get()));
    }
    if (subject.equals("bands.result")) {
      Optional<String> answer = ANSWERS.find(result.value());
      return answer.isEmpty()
          ? left(result, Why.VALUE_UNCLEAR)
          : Optional.of(band(result, subject, answer.get()));
    }
    Optional<NumberText> count =
        NumberText.parse(result.value(), mapping.mark())
            .filter(n -> n.kind() == Kind.VALUE && n.literal().matches("\\d{1,4}"));
    return count.isEmpty()
        ? left(result, Why.VALUE_UNCLEAR)
        : Optional.of(band(result, subject, count.get().literal()));
  }

  /** The pattern that a text names; empty when it says the opposite beside it. */
  private static Optional<String> pattern(String text) {
    Matcher written = PATTERN.matcher(text);
    if (!written.matches()) {
      return Optional.empty();
    }
    String number = written.group("number");
    String meant = LOCAL.contains(number) ? "positive" : "negative";
    return written.group("answer") == null
            || ANSWERS.find(written.group("answer")).filter(meant::equals).isPresent()
        ? Optional.of(number)
        : Optional.empty();
  }

  private static ReadResult band(ReportedResult result, String subject, String value) {
    return new ReadResult(result, subject, Optional.empty(), Optional.empty(), "", value);
  }

  private Optional<ReadResult> serology(ReportedResult result, Meaning meaning) {
    Optional<Compartment> in = fluid(result, meaning);
    Optional<String> answer = ANSWERS.find(result.value());
    if (in.isEmpty()) {
      return Optional.empty();
    }
    return answer.isEmpty()
        ? left(result, Why.VALUE_UNCLEAR)
        : Optional.of(
            new ReadResult(result, meaning.subject(), in, Optional.empty(), "", answer.get()));
  }
}
