package cistern.exchange.lab;

import cistern.exchange.json.Json;
import cistern.exchange.lab.Draws.Puncture;
import cistern.exchange.lab.LeftOver.Why;
import cistern.exchange.lab.ReportedResult.Standing;
import cistern.exchange.ucum.Conversions;
import cistern.exchange.ucum.Spellings;
import cistern.fact.Facts;
import cistern.measurement.Compartment;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SequencedMap;

/** Makes a work-up of each puncture in a report. Everything not understood is listed in it. */
public final class WorkupComposer {

  private static final String WINDOW = "same-puncture.upper";

  private final Spellings spellings;
  private final LocalMapping mapping;
  private final double hours;

  private WorkupComposer(Facts facts, LocalMapping mapping) {
    this.spellings = Spellings.of(Conversions.of(facts));
    this.mapping = mapping;
    this.hours = facts.number(WINDOW);
  }

  /** A composer under some facts, with what a person confirmed of local codes. */
  public static WorkupComposer of(Facts facts, LocalMapping mapping) {
    return new WorkupComposer(facts, mapping);
  }

  /** The work-ups of a report, one for each puncture; none when nothing is understood. */
  public List<Composed> compose(LabReport report) {
    List<LeftOver> leftOver = new ArrayList<>(report.leftOver());
    ResultMeaning meaning = new ResultMeaning(spellings, mapping, leftOver);
    List<ReadResult> understood = new ArrayList<>();
    List<ReportedResult> unread = new ArrayList<>();
    for (ReportedResult result : report.results()) {
      Optional<ReadResult> read = meaning.read(result);
      read.ifPresent(understood::add);
      if (read.isEmpty() && result.standing() == Standing.AMENDED) {
        unread.add(result);
      }
    }
    List<Puncture> punctures =
        new Draws(hours, leftOver).of(Replaced.by(unread, understood, leftOver));
    List<Composed> composed = new ArrayList<>();
    for (int i = 0; i < punctures.size(); i++) {
      String suffix = punctures.size() > 1 ? "-" + (i + 1) : "";
      composed.add(document(report, suffix, punctures.get(i), leftOver));
    }
    return composed;
  }

  /** What of a report is not understood, for a sentence when nothing is. */
  public List<LeftOver> leftOver(LabReport report) {
    List<LeftOver> leftOver = new ArrayList<>(report.leftOver());
    ResultMeaning meaning = new ResultMeaning(spellings, mapping, leftOver);
    report.results().forEach(meaning::read);
    return leftOver;
  }

  /** The codes of a report that nothing explains. */
  public List<Coding> unknown(LabReport report) {
    ResultMeaning meaning = new ResultMeaning(spellings, mapping, new ArrayList<>());
    return report.results().stream()
        .filter(result -> !meaning.isKnown(result) && !result.codes().isEmpty())
        .map(result -> result.codes().getFirst())
        .toList();
  }

  private Composed document(
      LabReport report, String suffix, Puncture puncture, List<LeftOver> common) {
    List<LeftOver> leftOver = new ArrayList<>(common);
    Map<String, String> places = new LinkedHashMap<>();
    SequencedMap<String, Json> members = new LinkedHashMap<>();
    members.put("workup", new Json.Numeral("1"));
    members.put("id", new Json.Text(WorkupId.of(report, suffix)));
    places.put("id", report.person().place());
    if (report.isInvented()) {
      members.put("invented", new Json.Truth(true));
    }
    person(report.person(), puncture).ifPresent(p -> members.put("person", p));
    places.put("person", report.person().place());
    List<ReadResult> results = Replaced.without(puncture.results(), leftOver);
    draws(puncture, results, leftOver).ifPresent(d -> members.put("draws", d));
    ResultList.add(results, members, places);
    Map<String, ReadResult> byKey = new LinkedHashMap<>();
    results.forEach(r -> byKey.put(r.key(), r));
    BandSpellings.of(byKey, leftOver).ifPresent(b -> members.put("bands", b));
    places.put("bands", bandPlace(results));
    if (!leftOver.isEmpty()) {
      members.put(
          LeftOver.FIELD, new Json.Sequence(leftOver.stream().map(LeftOver::toJson).toList()));
    }
    WorkupFields.add(report.fields(), members);
    report
        .fields()
        .keySet()
        .forEach(path -> places.put(WorkupFields.place(path), report.person().place()));
    members.put("source", source(report));
    return new Composed(new Json.Structure(members), places);
  }

  private static String bandPlace(List<ReadResult> results) {
    return results.stream()
        .filter(u -> u.subject().startsWith("bands."))
        .map(u -> u.from().place())
        .findFirst()
        .orElse("");
  }

  private static Json.Structure source(LabReport report) {
    SequencedMap<String, Json> source = new LinkedHashMap<>();
    source.put("carrier", new Json.Text(report.carrier()));
    report.id().ifPresent(id -> source.put("report", new Json.Text(id)));
    return new Json.Structure(source);
  }

  private static Optional<Json.Structure> person(ReportedPerson person, Puncture puncture) {
    SequencedMap<String, Json> members = new LinkedHashMap<>();
    person.id().ifPresent(id -> members.put("id", new Json.Text(id)));
    person.name().ifPresent(name -> members.put("name", new Json.Text(name)));
    person.birthDate().ifPresent(d -> members.put("birthDate", new Json.Text(d.toString())));
    Optional<LocalDate> day =
        puncture.csf().or(puncture::serum).map(moment -> moment.local().toLocalDate());
    person
        .ageYears()
        .or(() -> person.birthDate().flatMap(b -> day.flatMap(d -> Age.years(b, d))))
        .ifPresent(years -> members.put("ageYears", new Json.Numeral(years)));
    person.sex().ifPresent(sex -> members.put("sex", new Json.Text(sex)));
    return members.isEmpty() ? Optional.empty() : Optional.of(new Json.Structure(members));
  }

  private Optional<Json.Structure> draws(
      Puncture puncture, List<ReadResult> results, List<LeftOver> leftOver) {
    SequencedMap<String, Json> draws = new LinkedHashMap<>();
    SequencedMap<String, Json> csf = draw("csf", puncture.csf(), leftOver);
    results.stream()
        .filter(u -> u.subject().equals("appearance"))
        .findFirst()
        .ifPresent(u -> csf.put("appearance", new Json.Text(u.word())));
    received(puncture.csf(), ofCsf(results))
        .ifPresent(t -> csf.put("receivedAt", new Json.Text(t)));
    List<ReadResult> ofSerum = results.stream().filter(u -> u.isIn(Compartment.SERUM)).toList();
    SequencedMap<String, Json> serum = draw("serum", puncture.serum(), leftOver);
    received(puncture.serum(), ofSerum).ifPresent(t -> serum.put("receivedAt", new Json.Text(t)));
    if (!csf.isEmpty()) {
      draws.put("csf", new Json.Structure(csf));
    }
    if (!serum.isEmpty()) {
      draws.put("serum", new Json.Structure(serum));
    }
    return draws.isEmpty() ? Optional.empty() : Optional.of(new Json.Structure(draws));
  }

  /** Bands have no fluid of their own: they are of the CSF. */
  private static List<ReadResult> ofCsf(List<ReadResult> results) {
    return results.stream().filter(u -> u.in().isEmpty() || u.isIn(Compartment.CSF)).toList();
  }

  private SequencedMap<String, Json> draw(
      String fluid, Optional<Moment> at, List<LeftOver> leftOver) {
    SequencedMap<String, Json> draw = new LinkedHashMap<>();
    Optional<Moment> zoned = at.map(moment -> moment.in(mapping.zone()));
    zoned.flatMap(Moment::toText).ifPresent(text -> draw.put("at", new Json.Text(text)));
    if (zoned.isPresent() && draw.isEmpty()) {
      String written = zoned.get().local().toString();
      leftOver.add(new LeftOver("draws." + fluid + ".at", Why.TIME_UNCLEAR, "", written, ""));
    }
    return draw;
  }

  private Optional<String> received(Optional<Moment> drawn, List<ReadResult> results) {
    return results.stream()
        .filter(u -> drawn.isPresent() && u.from().specimen().collectedAt().equals(drawn))
        .flatMap(u -> u.from().specimen().receivedAt().stream())
        .flatMap(moment -> moment.in(mapping.zone()).toText().stream())
        .findFirst();
  }
}
