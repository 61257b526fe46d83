package cistern.exchange.lab;

import cistern.exchange.json.Fields;
import cistern.exchange.json.InputLimits;
import cistern.exchange.json.InputProblem;
import cistern.exchange.json.InputProblems;
import cistern.exchange.json.InputTrouble;
import cistern.exchange.json.Json;
import cistern.exchange.json.JsonDocument;
import cistern.exchange.json.NumberRange;
import cistern.exchange.lab.LocalMapping.DateOrder;
import cistern.exchange.lab.LocalMapping.Entry;
import cistern.exchange.lab.LocalMapping.Kind;
import cistern.exchange.ucum.Conversions;
import cistern.exchange.ucum.Spellings;
import cistern.fact.Facts;
import cistern.measurement.Analyte;
import cistern.measurement.Compartment;
import java.io.InputStream;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * Reads a mapping file, version 1, and judges it before anything is read with it: every unit must
 * measure its analyte, nothing may stand twice, and a person must have confirmed it.
 */
public final class MappingFile {

  /** The subject of what is to be left out. */
  public static final String IGNORE = "ignore";

  private static final Set<String> FIELDS =
      Set.of(
          IGNORE,
          "id",
          "person.id",
          "name",
          "ageYears",
          "sex",
          "birthDate",
          "csf.at",
          "serum.at",
          "at",
          "test",
          "code",
          "fluid",
          "value",
          "unit",
          "range",
          "flag",
          "status",
          "assay",
          "comment",
          "computed",
          "bands.csfOnly",
          "bands.shared",
          "bands.serumOnly",
          "bands.inCsf",
          "bands.inSerum",
          "bands.pattern",
          "bands.result");

  private final InputLimits limits;
  private final Spellings spellings;

  private MappingFile(Facts facts) {
    limits = InputLimits.of(facts);
    spellings = Spellings.of(Conversions.of(facts));
  }

  /** A reader under some facts. */
  public static MappingFile of(Facts facts) {
    return new MappingFile(facts);
  }

  /** The mapping of a file; empty, with every reason noted, when it cannot be used. */
  public Optional<LocalMapping> read(Path file, InputProblems problems) {
    return read(JsonDocument.read(file, limits, problems), problems);
  }

  /** The mapping of a stream, read to its end; empty, with every reason noted, when it is none. */
  public Optional<LocalMapping> read(InputStream in, InputProblems problems) {
    return read(JsonDocument.read(in, limits, problems), problems);
  }

  private Optional<LocalMapping> read(Optional<Json.Structure> document, InputProblems problems) {
    Optional<LocalMapping> mapping =
        document.map(whole -> mapping(Fields.of(whole, limits, problems)));
    problems
        .kept()
        .forEach(kept -> problems.add(InputProblem.of(InputTrouble.UNKNOWN_FIELD, kept.place())));
    return mapping.filter(m -> problems.isValid());
  }

  private LocalMapping mapping(Fields whole) {
    Optional<BigDecimal> version = whole.decimal("mapping", NumberRange.ANY);
    if (version.isEmpty() || version.get().compareTo(BigDecimal.ONE) != 0) {
      whole.add("mapping", InputTrouble.VERSION, "1");
    }
    whole.text("name");
    Optional<String> confirmedBy = whole.text("confirmedBy").filter(name -> !name.isBlank());
    if (confirmedBy.isEmpty()) {
      whole.add("confirmedBy", InputTrouble.NOT_CONFIRMED);
    }
    DecimalMark mark =
        whole
            .word("decimal", MappingFile::mark, List.of("point", "comma"))
            .orElse(DecimalMark.UNTOLD);
    DateOrder dates =
        whole
            .word("dates", MappingFile::dates, List.of("day-first", "month-first"))
            .orElse(DateOrder.UNTOLD);
    Optional<ZoneId> zone = zone(whole);
    List<Entry> entries = new ArrayList<>();
    entries.addAll(entries(whole, "columns", "heading", Kind.HEADING));
    entries.addAll(entries(whole, "codes", "code", Kind.CODE));
    entries.addAll(entries(whole, "specimens", "word", Kind.WORD));
    whole.checkNoOthers();
    return new LocalMapping(confirmedBy, mark, dates, zone, entries);
  }

  private static Optional<DecimalMark> mark(String word) {
    return Stream.of(DecimalMark.POINT, DecimalMark.COMMA)
        .filter(m -> m.name().equalsIgnoreCase(word))
        .findFirst();
  }

  private static Optional<DateOrder> dates(String word) {
    return Stream.of(DateOrder.DAY_FIRST, DateOrder.MONTH_FIRST)
        .filter(d -> d.name().replace('_', '-').equalsIgnoreCase(word))
        .findFirst();
  }

  private static Optional<ZoneId> zone(Fields whole) {
    Optional<String> name = whole.text("zone");
    Optional<ZoneId> zone = name.flatMap(MappingFile::zone);
    if (name.isPresent() && zone.isEmpty()) {
      whole.add("zone", InputTrouble.ILL_FORMED, "a zone such as Europe/Berlin or +01:00");
    }
    return zone;
  }

  /** The zone of a name or an offset. */
  public static Optional<ZoneId> zone(String name) {
    try {
      return Optional.of(ZoneId.of(name));
    } catch (DateTimeException notAZone) {
      return Optional.empty();
    }
  }

  private List<Entry> entries(Fields whole, String list, String key, Kind kind) {
    List<Entry> entries = new ArrayList<>();
    Set<String> seen = new HashSet<>();
    for (Fields entry : whole.objects(list)) {
      entry.checkGiven(key);
      String text = entry.text(key).orElse("");
      String system = kind == Kind.CODE ? entry.text("system").orElse("") : "";
      if (!seen.add(system + " " + WordTable.plain(text))) {
        entry.add(key, InputTrouble.ENTRY_TWICE);
      }
      Meaning meaning = kind == Kind.WORD ? word(entry) : meaning(entry);
      entry.checkNoOthers();
      entries.add(new Entry(kind, text, system, meaning, entry.place().path()));
    }
    return entries;
  }

  private static Optional<Compartment> in(Fields entry) {
    List<String> allowed = Stream.of(Compartment.values()).map(Compartment::code).toList();
    return entry.word("in", Compartment::parse, allowed);
  }

  private static Meaning word(Fields entry) {
    entry.checkGiven("in");
    return new Meaning("", in(entry), Optional.empty());
  }

  private Meaning meaning(Fields entry) {
    entry.checkGiven("means");
    String subject = entry.text("means").orElse(IGNORE);
    Optional<Compartment> in = in(entry);
    Optional<String> unit = entry.text("unit");
    Optional<Analyte> analyte = Analyte.parse(subject);
    boolean isField =
        FIELDS.contains(subject) || subject.startsWith("serology.") || WorkupFields.isPath(subject);
    if (analyte.isEmpty() && !isField) {
      entry.add("means", InputTrouble.ILL_FORMED, "an analyte, or a field of the guide");
    }
    if (analyte.isPresent() && unit.isPresent() && ucum(unit.get(), analyte.get()).isEmpty()) {
      entry.add(
          "unit",
          InputTrouble.OTHER_DIMENSION,
          unit.get(),
          analyte.get().term(),
          analyte.get().unit().ucum(),
          "");
    }
    return new Meaning(subject, in, unit);
  }

  private Optional<String> ucum(String unit, Analyte analyte) {
    return spellings.ucum(unit, analyte);
  }
}
