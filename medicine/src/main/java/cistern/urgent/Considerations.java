package cistern.urgent;

import cistern.bands.BandPattern;
import cistern.bedside.MicrobeTest;
import cistern.bedside.Sign;
import cistern.differential.Serology;
import cistern.finding.FindingCode;
import cistern.finding.Verdict;
import cistern.measurement.Answer;
import cistern.measurement.Compartment;
import cistern.panel.Circumstance;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.BiPredicate;
import java.util.function.Predicate;
import java.util.stream.Stream;

/** What to think of: one row a disease, ordered by how specific what speaks for it is. */
final class Considerations {

  /** How specific a reason is, most first. */
  private enum Weight {
    SPECIFIC,
    URGENT,
    PATTERN
  }

  /**
   * A reason.
   *
   * @param code the finding or the rule, as named in files
   * @param weight how specific it is
   * @param holds when it is there
   */
  private record Cue(String code, Weight weight, BiPredicate<Observed, Urgent> holds) {}

  /** A row. */
  private record Row(
      String code, String term, List<Cue> reasonsFor, List<Cue> reasonsAgainst, String next) {}

  private static final String MS = "ms";

  private static final Cue BANDS = pattern("bands", Cues.LOCAL_BANDS);
  private static final Cue NO_BANDS = pattern("bands", Cues.NO_BANDS);
  private static final Cue NO_BANDS_UNTREATED =
      pattern("bands", o -> Cues.NO_BANDS.answer(o).isYes() && !Cues.DEPLETED.answer(o).isYes());
  private static final Cue FEW_CELLS =
      pattern("leukocytes", Trigger.under(Quantity.LEUKOCYTES, "leukocytes.upper"));
  private static final Cue MANY_CELLS =
      pattern("leukocytes", Trigger.over(Quantity.LEUKOCYTES, "flag.leukocytes-raised.over"));
  private static final Cue BARRIER =
      pattern(
          "albumin-quotient",
          Trigger.over(Quantity.ALBUMIN_QUOTIENT, "urgent.sarcoid.albumin-quotient.over"));
  private static final Cue LOW_GLUCOSE = pattern("glucose-ratio", Cues.GLUCOSE_RATIO_LOW);
  private static final Cue LACTATE = pattern("lactate", Cues.LACTATE_ABOVE);
  private static final Cue PROTEIN =
      pattern("total-protein", Trigger.over(Quantity.PROTEIN, "stop.atypical.protein.over"));
  private static final Cue NEUTROPHILS =
      pattern(
          "neutrophils.csf",
          Trigger.all(
              Cues.CELLS, Trigger.from(Quantity.NEUTROPHIL_SHARE, "urgent.neutrophils.from")));
  private static final Cue IGM_DOMINANT =
      pattern("igm-intrathecal-fraction", o -> o.isIgmDominant() == Answer.YES);
  private static final Cue THREE_CLASSES = pattern("iga-intrathecal-fraction", Cues.THREE_CLASSES);
  private static final Cue ALIKE =
      pattern("bands", o -> isPattern(o, BandPattern.SYSTEMIC) && !o.isBloody());
  private static final Cue MRZ = above(FindingCode.MRZ_REACTION, Weight.PATTERN);
  private static final Cue KAPPA = above(FindingCode.KAPPA_INDEX, Weight.PATTERN);
  private static final Cue NO_MRZ =
      pattern(
          "mrz-reaction", o -> o.findings().verdict(FindingCode.MRZ_REACTION) == Verdict.WITHIN);

  private static final List<Row> ROWS =
      List.of(
          new Row(
              "bacterial-infection",
              "bacterial meningitis",
              List.of(
                  microbe("gram", "culture"),
                  rule("bacterial-pattern"),
                  rule("lactate-and-cells"),
                  NEUTROPHILS,
                  LACTATE),
              List.of(FEW_CELLS),
              "Gram stain and culture|blood cultures|PCR by agent"),
          new Row(
              "herpes-encephalitis",
              "herpes encephalitis",
              List.of(
                  target("hsv", "herpes", "vzv", "zoster", "varicella"), rule("herpes-possible")),
              List.of(),
              "HSV and VZV PCR|MRI|EEG"),
          new Row(
              "tuberculosis",
              "tuberculous meningitis",
              List.of(
                  microbe("acid-fast", "xpert", "tuberculosis-fungi"),
                  target("tubercul", "tb"),
                  rule("tuberculous-pattern")),
              List.of(),
              "TB PCR and culture from at least 10 mL, repeated|chest imaging|HIV test"),
          new Row(
              "fungal-infection",
              "cryptococcal or other fungal disease",
              List.of(target("crypto", "fung", "candida", "aspergill"), rule("fungal-possible")),
              List.of(),
              "cryptococcal antigen in CSF and serum|fungal culture|HIV test"),
          new Row(
              "neuroborreliosis",
              "neuroborreliosis",
              List.of(
                  above(FindingCode.BORRELIA_ANTIBODY_INDEX, Weight.SPECIFIC),
                  rule("borrelia-pattern"),
                  IGM_DOMINANT,
                  THREE_CLASSES),
              List.of(FEW_CELLS),
              "Borrelia antibody index with paired serum|CXCL13 in CSF"),
          new Row(
              "neurosyphilis",
              "neurosyphilis",
              List.of(
                  new Cue("vdrl", Weight.SPECIFIC, (o, u) -> Cues.VDRL.answer(o).isYes()),
                  rule("syphilis-possible")),
              List.of(),
              "serum TPPA and RPR|CSF VDRL and TPPA|HIV test"),
          new Row(
              "sspe",
              "subacute sclerosing panencephalitis",
              List.of(
                  new Cue(
                      "measles-antibody-index",
                      Weight.SPECIFIC,
                      (o, u) -> u.holds("measles-index-very-high"))),
              List.of(),
              "EEG|measles serology"),
          new Row(
              "infection",
              "another infection",
              List.of(
                  new Cue(
                      "microbe-found", Weight.SPECIFIC, (o, u) -> Cues.MICROBE.answer(o).isYes()),
                  rule("few-cells-do-not-exclude"),
                  rule("many-cells"),
                  MANY_CELLS),
              List.of(FEW_CELLS),
              "PCR by agent|HIV test|syphilis serology|cultures"),
          new Row(
              "nmosd",
              "neuromyelitis optica spectrum disorder",
              List.of(antibody(Serology.AQP4_IGG), NEUTROPHILS, NO_BANDS_UNTREATED),
              List.of(BANDS),
              "aquaporin-4 antibodies in serum by cell-based assay|MRI of the whole cord"),
          new Row(
              "mogad",
              "MOG antibody-associated disease",
              List.of(antibody(Serology.MOG_IGG), MANY_CELLS, NO_BANDS_UNTREATED),
              List.of(BANDS, MRZ),
              "MOG antibodies in serum by cell-based assay, with titre"),
          new Row(
              "spinal-block",
              "a spinal block",
              List.of(rule("spinal-block")),
              List.of(),
              "MRI of the whole spine|neurosurgery"),
          new Row(
              "subarachnoid-haemorrhage",
              "subarachnoid bleeding",
              List.of(
                  rule("bleeding-not-excluded"),
                  new Cue(
                      "yellow-or-bloody",
                      Weight.URGENT,
                      (o, u) ->
                          u.holds("yellow-or-bloody")
                              && Cues.sign(Sign.SUDDEN_HEADACHE).answer(o) != Answer.NO),
                  pattern("appearance", Cues.XANTHOCHROMIC)),
              List.of(),
              "CT and vessel imaging|bilirubin by spectrophotometry on the last tube"),
          new Row(
              "leptomeningeal-tumour",
              "tumour cells in the fluid",
              List.of(rule("atypical-cells"), rule("low-sugar-no-microbe"), LOW_GLUCOSE, PROTEIN),
              List.of(FEW_CELLS),
              "cytology from more than 10 mL, twice|flow cytometry|contrast MRI of brain and whole"
                  + " spine"),
          new Row(
              "lymphoma",
              "lymphoma",
              List.of(rule("lymphoma-possible"), IGM_DOMINANT),
              List.of(FEW_CELLS),
              "cytology and flow cytometry|MYD88, IL-10|eye examination"),
          new Row(
              "polyradiculoneuropathy",
              "inflammatory polyradiculoneuropathy",
              List.of(rule("protein-without-cells"), ALIKE),
              List.of(MANY_CELLS),
              "strength, reflexes and breathing|nerve conduction"),
          new Row(
              "raised-pressure",
              "raised intracranial pressure, venous thrombosis among its causes",
              List.of(rule("pressure-raised")),
              List.of(),
              "fundi|MRI with venography"),
          new Row(
              "low-pressure",
              "a leak of CSF",
              List.of(rule("pressure-low")),
              List.of(),
              "MRI of brain and spine"),
          new Row(
              "autoimmune-encephalitis",
              "autoimmune encephalitis",
              List.of(rule("autoimmune-encephalitis-possible")),
              List.of(),
              "neuronal antibodies in CSF and serum|EEG"),
          new Row(
              "parasite",
              "a parasite, a drug or a shunt",
              List.of(rule("eosinophils")),
              List.of(FEW_CELLS),
              "travel history|serology"),
          new Row(
              "pml",
              "progressive multifocal leukoencephalopathy",
              List.of(rule("pml-possible")),
              List.of(),
              "MRI|JC virus PCR by a sensitive assay"),
          new Row(
              "glucose-transporter-deficiency",
              "a transport defect of glucose, or late analysis",
              List.of(rule("low-sugar-quiet")),
              List.of(),
              "glucose in both fluids after 4 to 6 hours without food|gene test"),
          new Row(
              "neurosarcoidosis",
              "neurosarcoidosis",
              List.of(rule("sarcoid-possible"), BARRIER, LOW_GLUCOSE, LACTATE, MANY_CELLS),
              List.of(BANDS, MRZ),
              "chest imaging|contrast MRI|tissue"),
          new Row(
              MS,
              "multiple sclerosis",
              List.of(BANDS, MRZ, KAPPA),
              List.of(
                  NO_BANDS,
                  NO_MRZ,
                  MANY_CELLS,
                  BARRIER,
                  LOW_GLUCOSE,
                  LACTATE,
                  PROTEIN,
                  NEUTROPHILS),
              "MRI of brain and cord, weighed with history and examination"),
          new Row(
              "paraproteinaemia",
              "a monoclonal immunoglobulin",
              List.of(
                  pattern("bands", o -> isPattern(o, BandPattern.LADDER)),
                  pattern(
                      Circumstance.MONOCLONAL_GAMMOPATHY.code(),
                      o -> o.results().answer(Circumstance.MONOCLONAL_GAMMOPATHY).isYes())),
              List.of(),
              "serum immunofixation"),
          new Row(
              "systemic-immune-activation",
              "a systemic immune response",
              List.of(ALIKE),
              List.of(),
              "search for a systemic inflammation or infection"));

  private Considerations() {}

  /** The rows for which anything speaks, most specific first; MS only where it may be named. */
  static List<Consideration> of(Observed observed, Urgent urgent, boolean isOfMs) {
    return ROWS.stream()
        .filter(row -> isOfMs || !row.code.equals(MS))
        .map(row -> ranked(row, observed, urgent))
        .flatMap(Optional::stream)
        .sorted(Comparator.comparing(Ranked::weight).thenComparingInt(Ranked::place))
        .map(Ranked::what)
        .toList();
  }

  /**
   * A row with its rank.
   *
   * @param place where the first of its urgent rules stands among all that hold
   */
  private record Ranked(Weight weight, int place, Consideration what) {}

  private static Optional<Ranked> ranked(Row row, Observed observed, Urgent urgent) {
    List<Cue> reasons = holding(row.reasonsFor, observed, urgent);
    if (reasons.isEmpty()) {
      return Optional.empty();
    }
    List<Cue> against = holding(row.reasonsAgainst, observed, urgent);
    Weight weight = reasons.stream().map(Cue::weight).min(Comparator.naturalOrder()).orElseThrow();
    return Optional.of(
        new Ranked(
            weight,
            weight == Weight.URGENT ? place(reasons, urgent) : 0,
            new Consideration(
                row.code,
                row.term,
                codes(reasons),
                codes(against),
                List.of(row.next.split("\\|", -1)))));
  }

  private static List<Cue> holding(List<Cue> cues, Observed observed, Urgent urgent) {
    List<Cue> holding = new ArrayList<>();
    for (Cue cue : cues) {
      if (cue.holds.test(observed, urgent)) {
        holding.add(cue);
      }
    }
    return holding;
  }

  private static int place(List<Cue> reasons, Urgent urgent) {
    List<String> order = urgent.holding().stream().map(Urgency::code).toList();
    return reasons.stream()
        .map(Cue::code)
        .mapToInt(order::indexOf)
        .filter(at -> at >= 0)
        .min()
        .orElse(order.size());
  }

  private static List<String> codes(List<Cue> cues) {
    return new ArrayList<>(cues.stream().map(Cue::code).distinct().toList());
  }

  private static Cue pattern(String code, Predicate<Observed> holds) {
    return new Cue(code, Weight.PATTERN, (o, u) -> holds.test(o));
  }

  private static Cue pattern(String code, Trigger trigger) {
    return pattern(code, observed -> trigger.answer(observed).isYes());
  }

  private static Cue rule(String code) {
    return new Cue(code, Weight.URGENT, (o, u) -> u.holds(code));
  }

  private static Cue above(FindingCode code, Weight weight) {
    return new Cue(code.code(), weight, (o, u) -> o.isAbove(code));
  }

  private static Cue antibody(String test) {
    return new Cue(
        test, Weight.SPECIFIC, (o, u) -> o.serology().stream().anyMatch(s -> s.isPositive(test)));
  }

  private static Cue microbe(String... methods) {
    return new Cue(
        "microbe-found",
        Weight.SPECIFIC,
        (o, u) -> found(o).anyMatch(t -> Stream.of(methods).anyMatch(t::isMethod)));
  }

  private static Cue target(String... names) {
    return new Cue(
        "microbe-found",
        Weight.SPECIFIC,
        (o, u) ->
            found(o).anyMatch(t -> Stream.of(names).anyMatch(n -> t.isFor(n) || named(t, n))));
  }

  private static boolean named(MicrobeTest test, String name) {
    return test.test().toLowerCase(Locale.ROOT).startsWith(name);
  }

  private static Stream<MicrobeTest> found(Observed observed) {
    return observed.bedside().microbes().stream()
        .filter(MicrobeTest::isPositive)
        .filter(t -> t.in() == Compartment.CSF || t.isFor("crypto"));
  }

  private static boolean isPattern(Observed observed, BandPattern pattern) {
    return observed.bands().pattern().filter(p -> p == pattern).isPresent();
  }
}
