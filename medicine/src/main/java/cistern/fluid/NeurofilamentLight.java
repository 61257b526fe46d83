package cistern.fluid;

import cistern.fact.Fact;
import cistern.fact.Facts;
import cistern.fact.Grounds;
import cistern.finding.Finding;
import cistern.finding.FindingCode;
import cistern.finding.Limits;
import cistern.finding.Printed;
import cistern.finding.Threshold;
import cistern.finding.UnitProfile;
import cistern.finding.Verdict;
import cistern.finding.WrittenUnit;
import cistern.measurement.Analyte;
import cistern.measurement.Interval;
import cistern.measurement.Measurement;
import cistern.measurement.Sample;
import cistern.panel.CheckedPanel;
import cistern.panel.Panel;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Neurofilament light in serum or plasma, ng/L, against two tables by age that were made in plasma
 * on one platform (Bornhorst 2022, doi 10.1016/j.cca.2022.08.017; Simrén 2022, PMC9297091). A
 * marker of the course: it says nothing about which disease there is.
 */
public final class NeurofilamentLight {

  private static final Sample SERUM = Sample.serum(Analyte.NEUROFILAMENT_LIGHT);
  private static final List<Sample> ELSEWHERE =
      List.of(Sample.csf(Analyte.NEUROFILAMENT_LIGHT), Sample.blood(Analyte.NEUROFILAMENT_LIGHT));
  private static final FindingCode CODE = FindingCode.NEUROFILAMENT_LIGHT;
  private static final String START = "neurofilament-light.";
  private static final String RULE = START + "limit-rule";
  private static final String ASSAY = START + "assay";
  private static final String OTHER_ASSAYS = START + "other-assays";
  private static final String FLUID = START + "fluid";
  private static final String USE = START + "use";
  private static final String CENTILE = ".centile";
  private static final String AGE = ".age";

  private final Facts facts;

  private NeurofilamentLight(Facts facts) {
    this.facts = facts;
  }

  /** The tables under some facts. */
  public static NeurofilamentLight of(Facts facts) {
    return new NeurofilamentLight(facts);
  }

  /**
   * One table at one age.
   *
   * @param table as its keys name it
   * @param key of the limit
   * @param limits above it when strictly greater
   */
  private record Row(String table, String key, Limits limits) {}

  /** The finding of a panel. */
  public Finding interpret(CheckedPanel panel) {
    Grounds use = facts.grounds(USE);
    Optional<Measurement> measured = panel.panel().find(SERUM);
    if (measured.isEmpty()) {
      List<Sample> elsewhere = ELSEWHERE.stream().filter(panel.panel()::has).toList();
      return Finding.withoutValue(CODE, use, elsewhere, missing(panel.panel(), elsewhere));
    }
    Finding finding = Finding.of(CODE, measured.get().value(), use, List.of(SERUM));
    String assay = measured.get().assay().orElse("");
    List<Row> rows = rows(panel.panel().person().ageYears());
    return obstacle(assay, rows, panel)
        .map(finding::withNote)
        .orElseGet(() -> judged(finding, rows, names(assay, FLUID)))
        .withNote(facts.word(USE));
  }

  private String missing(Panel panel, List<Sample> elsewhere) {
    return Stream.concat(
            elsewhere.stream().flatMap(s -> panel.find(s).stream()).map(this::apart),
            Stream.of("not measured: " + SERUM.term()))
        .collect(Collectors.joining("; "));
  }

  /** A value of a fluid that no table is of. */
  private String apart(Measurement measured) {
    Interval value = measured.value();
    boolean isOver = Double.isInfinite(value.upper());
    String sign = value.isExact() ? "" : isOver ? "> " : "< ";
    return "%s%s in %s, for which no limit is held"
        .formatted(
            sign,
            amount(measured.sample(), isOver ? value.lower() : value.upper()),
            measured.sample().in().term());
  }

  /** With its unit. */
  private String amount(Sample sample, double held) {
    Optional<WrittenUnit> unit = UnitProfile.of(facts).find(sample);
    String number = WrittenUnit.number(unit, u -> u.number(held), () -> Printed.of(CODE, held));
    return number + " " + unit.map(WrittenUnit::text).orElse(CODE.unit().ucum());
  }

  /** Why a value has no limit to be judged by, if it has none. */
  private Optional<String> obstacle(String assay, List<Row> rows, CheckedPanel panel) {
    String platform = words(ASSAY).getFirst();
    if (assay.isBlank()) {
      return Optional.of("not judged: limits hold for " + platform + ", and no assay is named");
    }
    if (!isPlatform(assay)) {
      return Optional.of("not judged: limits hold for " + platform + " alone, not for " + assay);
    }
    if (!rows.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        panel.panel().person().ageYears().isEmpty()
            ? "not judged: limits go by age, which is unknown"
            : "not judged: no limit for this age");
  }

  /** Whether an assay names the platform of the tables, and no other beside it. */
  private boolean isPlatform(String assay) {
    return names(assay, ASSAY) && !names(assay, OTHER_ASSAYS);
  }

  private List<String> words(String key) {
    return Arrays.stream(facts.word(key).split(";", -1)).map(String::strip).toList();
  }

  private boolean names(String assay, String key) {
    String named = " " + plain(assay) + " ";
    return words(key).stream().anyMatch(word -> named.contains(" " + plain(word) + " "));
  }

  private static String plain(String text) {
    return text.toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}\\p{N}]+", " ").strip();
  }

  /** The rows of an age: that of the table which decides comes first. */
  private List<Row> rows(OptionalDouble age) {
    if (age.isEmpty()) {
      return List.of();
    }
    String first = facts.word(RULE);
    List<String> others =
        facts.keys(START).stream()
            .filter(key -> key.endsWith(CENTILE))
            .map(key -> key.substring(START.length(), key.length() - CENTILE.length()))
            .filter(table -> !table.equals(first))
            .toList();
    return Stream.concat(Stream.of(first), others.stream())
        .flatMap(table -> row(table, age.getAsDouble()).stream())
        .toList();
  }

  /** The last row that begins at an age or before; none beyond the oldest who were measured. */
  private Optional<Row> row(String table, double age) {
    if (age > facts.number(START + table + ".oldest")) {
      return Optional.empty();
    }
    return facts.keys(START + table + ".").stream()
        .filter(key -> key.endsWith(AGE) && facts.number(key) <= age)
        .reduce((earlier, later) -> later)
        .map(key -> key.substring(0, key.length() - AGE.length()) + ".upper")
        .map(key -> new Row(table, key, Limits.upper(Threshold.over(facts.number(key)))));
  }

  private Finding judged(Finding finding, List<Row> rows, boolean isPlasma) {
    Interval value = finding.value().orElseThrow();
    Row first = rows.getFirst();
    Verdict verdict = first.limits().judge(value);
    List<String> notes = new ArrayList<>(List.of("at this age " + beside(rows)));
    rows.stream()
        .filter(row -> row.limits().judge(value) != verdict)
        .map(row -> "by " + author(row) + " it is " + row.limits().judge(value).word())
        .forEach(notes::add);
    if (!isPlasma) {
      notes.add("the limits were measured in " + facts.word(FLUID) + ", this value in serum");
    }
    Grounds limits = facts.grounds(rows.stream().map(Row::key).toArray(String[]::new));
    return Finding.of(CODE, value, limits.and(finding.grounds()), finding.inputs())
        .withVerdict(verdict, first.limits(), Optional.of(first.table()))
        .withNote(String.join("; ", notes));
  }

  /** Every table at this age, with its centile. */
  private String beside(List<Row> rows) {
    return rows.stream()
        .map(
            row ->
                "%s, the %sth centile (%s)"
                    .formatted(
                        amount(SERUM, facts.number(row.key())),
                        Printed.significant(facts.number(START + row.table() + CENTILE)),
                        author(row)))
        .collect(Collectors.joining(", and "));
  }

  private String author(Row row) {
    Fact centile = facts.fact(START + row.table() + CENTILE);
    return centile.cited().references().stream()
        .findFirst()
        .map(reference -> reference.author() + " " + reference.year())
        .orElse(row.table());
  }
}
