package cistern.urgent;

import static cistern.urgent.Trigger.all;
import static cistern.urgent.Trigger.any;
import static cistern.urgent.Trigger.atLeast;
import static cistern.urgent.Trigger.over;
import static cistern.urgent.Trigger.stated;
import static cistern.urgent.Trigger.under;
import static cistern.urgent.Trigger.unless;
import static cistern.urgent.Trigger.upTo;
import static cistern.urgent.Trigger.where;

import cistern.bedside.MicrobeTest;
import cistern.finding.FindingCode;
import cistern.fluid.Infancy;
import cistern.measurement.Answer;
import cistern.panel.Circumstance;
import cistern.urgent.UrgentRule.Grade;
import java.util.Locale;
import java.util.stream.Collectors;

/** The rows for infection. */
final class InfectionRules {

  private static final String TREATING = "Treating doctor, by telephone. ";
  private static final String BACTERIAL =
      TREATING + "Gram stain, culture, blood cultures, PCR panel.";

  private static final Trigger SUGAR_OF_INFANTS =
      stated("CSF glucose below the age limit", "glucose.csf", InfectionRules::infantGlucose);
  private static final Trigger MOSTLY_NEUTROPHILS =
      Trigger.from(Quantity.NEUTROPHIL_SHARE, "urgent.neutrophils.from");

  private static final Trigger FIVE_PREDICTORS =
      any(
          where(
              Observed::isInfant,
              SUGAR_OF_INFANTS,
              any(
                  under(Quantity.GLUCOSE, "urgent.bacterial.glucose.under"),
                  under(Quantity.GLUCOSE_RATIO, "urgent.bacterial.glucose-ratio.under"))),
          all(
              over(Quantity.PROTEIN, "urgent.bacterial.protein.over"),
              unless(all(OtherRules.BLOCK, under(Quantity.LEUKOCYTES, "leukocytes.upper")))),
          over(Quantity.LEUKOCYTES, "urgent.bacterial.leukocytes.over"),
          over(Quantity.NEUTROPHILS, "urgent.bacterial.neutrophils.over"));

  /** Rows 2 and 3 of the table over the decided cases. */
  private static final Trigger WIDE =
      any(
          over(Quantity.LEUKOCYTES, "urgent.bacterial.wide.leukocytes.over"),
          all(
              MOSTLY_NEUTROPHILS,
              where(
                  Observed::isInfant,
                  SUGAR_OF_INFANTS,
                  under(Quantity.GLUCOSE_RATIO, "urgent.bacterial.wide.glucose-ratio.under"))),
          all(
              MOSTLY_NEUTROPHILS,
              Trigger.from(Quantity.LEUKOCYTES, "urgent.bacterial.wide.leukocytes.from")));

  /** In the first two months an infection shows little in the fluid. */
  private static final Trigger ILL_INFANT =
      all(
          under(Quantity.AGE_DAYS, "urgent.ill-infant.age-days.under"),
          any(Cues.FEVER, Cues.SEIZURE));

  static final UrgentRule BACTERIAL_PATTERN =
      UrgentRule.infection(
          "bacterial-pattern",
          Grade.now(
              FIVE_PREDICTORS,
              "Bacterial meningitis pattern: {values}. Call the treating doctor now; do not wait for more results.",
              BACTERIAL),
          new Grade(
              Tier.T0,
              false,
              ILL_INFANT,
              (o, v) ->
                  "Fever or a seizure at this age is an emergency whatever the counts: call the"
                      + " treating doctor now.",
              BACTERIAL),
          Grade.of(
              Tier.T1,
              WIDE,
              "Bacterial meningitis is not excluded: {values}. Call the treating doctor today.",
              BACTERIAL));

  private static final Trigger LACTATE_WITH_CELLS =
      all(Trigger.from(Quantity.LACTATE, "urgent.lactate.from"), Cues.CELLS);

  /** Whether each of the five predictors is known, and none of them nor of the wider ones holds. */
  static boolean isWithoutPredictors(Observed observed) {
    return FIVE_PREDICTORS.answer(observed) == Answer.NO && !WIDE.answer(observed).isYes();
  }

  static final UrgentRule LACTATE_AND_CELLS =
      UrgentRule.infection(
          "lactate-and-cells",
          Grade.now(
              LACTATE_WITH_CELLS,
              "Lactate and cells raised ({values}): bacterial, tuberculous or fungal infection must be thought of now.",
              BACTERIAL + " A seizure, a stroke or a bleed also raises lactate."));

  static final UrgentRule MICROBE_FOUND =
      UrgentRule.infection(
          "microbe-found",
          Grade.now(Cues.MICROBE, "", TREATING + "Infectious diseases.")
              .saying((o, v) -> tests(o) + " positive in CSF. Call the treating doctor now."));

  private static final Trigger TUBERCULOUS =
      atLeast(
          3,
          Cues.CLEAR,
          all(
              Trigger.from(Quantity.LEUKOCYTES, "urgent.tuberculous.leukocytes.from"),
              upTo(Quantity.LEUKOCYTES, "urgent.tuberculous.leukocytes.to")),
          over(Quantity.LYMPHOCYTE_SHARE, "urgent.tuberculous.lymphocytes.over"),
          over(Quantity.PROTEIN, "urgent.tuberculous.protein.over"),
          tuberculousSugar());

  /** Clear fluid with few lymphocytes is that of MS: it counts beside protein or sugar only. */
  private static final Trigger BEYOND_MS =
      any(
          over(Quantity.LEUKOCYTES, "urgent.tuberculous.leukocytes-of-ms.to"),
          over(Quantity.PROTEIN, "urgent.tuberculous.protein.over"),
          tuberculousSugar());

  private static final String TB_ACT =
      "Treating doctor, today. TB PCR and culture from at least 10 mL, repeated; chest imaging; HIV."
          + " A negative PCR does not settle it.";

  static final UrgentRule TUBERCULOUS_PATTERN =
      UrgentRule.infection(
          "tuberculous-pattern",
          Grade.of(
                  Tier.T0,
                  all(TUBERCULOUS, BEYOND_MS, any(LACTATE_WITH_CELLS, Cues.DROWSY)),
                  "",
                  TB_ACT)
              .saying((o, v) -> tuberculous(o) + "Call the treating doctor now."),
          Grade.of(Tier.T1, all(TUBERCULOUS, BEYOND_MS), "", TB_ACT)
              .saying((o, v) -> tuberculous(o) + "Call the treating doctor today."));

  private static final String FUNGAL =
      "Cryptococcal disease possible: antigen in CSF and serum, and pressure, now.";
  private static final String FUNGAL_ACT =
      "Infectious diseases. HIV, India ink, fungal culture. With a high pressure and symptoms, relief"
          + " of pressure is theirs to decide.";

  static final UrgentRule FUNGAL_POSSIBLE =
      UrgentRule.infection(
          "fungal-possible",
          Grade.now(
              any(
                  Cues.CRYPTOCOCCUS,
                  all(
                      Cues.IMMUNOCOMPROMISED,
                      Trigger.from(Quantity.PRESSURE, "urgent.pressure.fungal.from"))),
              FUNGAL,
              FUNGAL_ACT),
          Grade.of(Tier.T1, all(Cues.IMMUNOCOMPROMISED, Cues.CELLS), FUNGAL, FUNGAL_ACT));

  static final UrgentRule HERPES_POSSIBLE =
      UrgentRule.infection(
          "herpes-possible",
          Grade.now(
              all(Cues.ACUTE_BRAIN, any(Cues.CELLS, Cues.HERPES_PCR_OPEN)),
              "Encephalitis possible: HSV and VZV PCR now; normal cells do not exclude it.",
              "On-call neurology. MRI, EEG. Where it is suspected and a PCR of the first days is"
                  + " negative, it is repeated."));

  private static final Trigger NO_RULE_MET =
      unless(
          any(
              Cues.MICROBE,
              FIVE_PREDICTORS,
              ILL_INFANT,
              WIDE,
              LACTATE_WITH_CELLS,
              all(TUBERCULOUS, BEYOND_MS),
              Cues.CRYPTOCOCCUS));

  static final UrgentRule FEW_CELLS =
      UrgentRule.infection(
          "few-cells-do-not-exclude",
          Grade.of(
              Tier.T1,
              all(
                  Cues.FOR_INFECTION,
                  any(
                      Cues.IMMUNOCOMPROMISED,
                      Cues.circumstance(Circumstance.B_CELL_DEPLETION, "B-cell depletion"),
                      under(Quantity.AGE_DAYS, "urgent.few-cells.age-days.under"),
                      under(Quantity.ONSET_HOURS, "urgent.few-cells.onset-hours.under")),
                  any(under(Quantity.LEUKOCYTES, "leukocytes.upper"), NO_RULE_MET)),
              "Few cells do not exclude infection here.",
              "Treating doctor, today. PCR panel, culture, repeat puncture."));

  private static final Trigger BORRELIA_INDEX = Cues.above(FindingCode.BORRELIA_ANTIBODY_INDEX);
  private static final String BORRELIA_ACT =
      "Infectious diseases, today. Antibody index with paired serum; PCR only within six weeks.";

  static final UrgentRule BORRELIA_PATTERN =
      UrgentRule.infection(
          "borrelia-pattern",
          Grade.of(Tier.T1, all(BORRELIA_INDEX, Cues.CELLS), "", BORRELIA_ACT)
              .saying((o, v) -> borrelia(o)),
          Grade.of(
              Tier.T1,
              all(
                  Trigger.from(Quantity.LYMPHOCYTE_SHARE, "urgent.borrelia.lymphocytes.from"),
                  stated(
                      "IgM-dominant or three-class synthesis",
                      "igm-intrathecal-fraction",
                      InfectionRules::isManyClasses),
                  stated(
                      "no Borrelia antibody index",
                      "borrelia-antibody-index",
                      o ->
                          Cues.of(
                              !o.findings().get(FindingCode.BORRELIA_ANTIBODY_INDEX).hasValue()))),
              "Neuroborreliosis possible ({values}): treat it as infection first.",
              BORRELIA_ACT));

  static final UrgentRule SYPHILIS_POSSIBLE =
      UrgentRule.infection(
          "syphilis-possible",
          Grade.of(
              Tier.T1,
              any(
                  all(
                      Cues.VDRL,
                      unless(over(Quantity.ERYTHROCYTES, "urgent.syphilis.erythrocytes.to"))),
                  all(
                      Cues.TREPONEMA,
                      any(
                          over(Quantity.LEUKOCYTES, "urgent.syphilis.leukocytes.over"),
                          over(Quantity.PROTEIN, "urgent.syphilis.protein.over")))),
              "Neurosyphilis possible: sexual health or infectious diseases today.",
              "Serum TPPA and RPR, CSF VDRL and TPPA, HIV."));

  static final UrgentRule MEASLES_VERY_HIGH =
      UrgentRule.infection(
          "measles-index-very-high",
          Grade.of(
              Tier.T1,
              any(
                  Trigger.from(Quantity.MEASLES, "urgent.measles.from"),
                  all(
                      Trigger.from(Quantity.MEASLES, "urgent.measles.alone.from"),
                      stated(
                          "rubella and varicella-zoster not above",
                          "mrz-reaction",
                          InfectionRules::isMeaslesAlone))),
              "Measles antibody far above the others ({values}): SSPE must be excluded.",
              "Neurology, today. EEG, measles serology."));

  private InfectionRules() {}

  private static Trigger tuberculousSugar() {
    return where(
        Observed::isInfant,
        SUGAR_OF_INFANTS,
        any(
            under(Quantity.GLUCOSE_RATIO, "urgent.tuberculous.glucose-ratio.under"),
            under(Quantity.GLUCOSE, "urgent.tuberculous.glucose.under")));
  }

  private static String tuberculous(Observed observed) {
    long met = ((Trigger.AtLeast) TUBERCULOUS).count(observed);
    return "Tuberculous pattern, %d of 5. ".formatted(met);
  }

  private static String borrelia(Observed observed) {
    boolean isSymptomatic =
        observed.setting().isAttack() || !observed.bedside().attack().syndromes().isEmpty();
    return "Neuroborreliosis criteria %d of 3: treat as infection first."
        .formatted(isSymptomatic ? 3 : 2);
  }

  /** From the third month on no limit of the age is known. */
  private static Answer infantGlucose(Observed observed) {
    return observed
        .infancy()
        .map(Infancy::glucoseKey)
        .filter(key -> observed.facts().find(key).isPresent())
        .map(key -> under(Quantity.GLUCOSE, key).answer(observed))
        .orElse(Answer.NO);
  }

  private static Answer isManyClasses(Observed observed) {
    Answer three = Cues.THREE_CLASSES.answer(observed);
    return three.isYes() ? three : observed.isIgmDominant();
  }

  private static Answer isMeaslesAlone(Observed observed) {
    Answer any =
        any(
                Cues.above(FindingCode.RUBELLA_ANTIBODY_INDEX),
                Cues.above(FindingCode.VARICELLA_ZOSTER_ANTIBODY_INDEX))
            .answer(observed);
    return switch (any) {
      case YES -> Answer.NO;
      case NO -> Answer.YES;
      case UNKNOWN -> Answer.UNKNOWN;
    };
  }

  private static String tests(Observed observed) {
    String named =
        Cues.microbeTests(observed)
            .filter(MicrobeTest::isPositive)
            .map(MicrobeTest::toText)
            .distinct()
            .collect(Collectors.joining(", "));
    return named.substring(0, 1).toUpperCase(Locale.ROOT) + named.substring(1);
  }
}
