package cistern.urgent;

import static cistern.urgent.Trigger.all;
import static cistern.urgent.Trigger.any;
import static cistern.urgent.Trigger.over;
import static cistern.urgent.Trigger.stated;
import static cistern.urgent.Trigger.under;
import static cistern.urgent.Trigger.unless;
import static cistern.urgent.Trigger.where;

import cistern.bedside.Sign;
import cistern.finding.FindingCode;
import cistern.finding.UnitProfile;
import cistern.finding.Verdict;
import cistern.measurement.Answer;
import cistern.measurement.Compartment;
import cistern.urgent.UrgentRule.Grade;

/** The rows for everything but infection. */
final class OtherRules {

  private static final Trigger LEGS = Cues.sign(Sign.LEG_OR_BLADDER_SIGNS);
  private static final Trigger SUDDEN_HEADACHE = Cues.sign(Sign.SUDDEN_HEADACHE);
  private static final Trigger COLOURED = any(Cues.XANTHOCHROMIC, Cues.BLOOD_IN_LAST_TUBE);

  static final UrgentRule BLEEDING =
      UrgentRule.of(
          "bleeding-not-excluded",
          Grade.now(
              all(SUDDEN_HEADACHE, COLOURED),
              "Subarachnoid bleeding not excluded. Call now: CT and vessel imaging.",
              "On-call neurology or neurosurgery. Bilirubin by spectrophotometry on the last tube, kept"
                  + " in the dark."));

  static final UrgentRule YELLOW_OR_BLOODY =
      UrgentRule.of(
          "yellow-or-bloody",
          Grade.of(
                  Tier.T2,
                  all(COLOURED, unless(SUDDEN_HEADACHE)),
                  "",
                  "Serum bilirubin; total protein.")
              .saying((o, v) -> yellow(o)));

  static final UrgentRule ATYPICAL_CELLS =
      UrgentRule.of(
          "atypical-cells",
          Grade.of(
              Tier.T1,
              stated(
                  "malignant or atypical cells",
                  "atypicalCells",
                  o -> o.results().csf().looked().atypicalCells()),
              "Malignant or atypical cells: neuro-oncology today.",
              "Neuro-oncology. Cytology again, flow cytometry; contrast MRI of brain and whole spine."));

  private static final Trigger SUGAR_OR_LACTATE = any(Cues.GLUCOSE_RATIO_LOW, Cues.LACTATE_ABOVE);

  static final UrgentRule LOW_SUGAR =
      UrgentRule.of(
          "low-sugar-no-microbe",
          Grade.of(
                  Tier.T1,
                  all(
                      any(Cues.CELLS, over(Quantity.PROTEIN, "urgent.low-sugar.protein.over")),
                      SUGAR_OR_LACTATE,
                      unless(Cues.MICROBE),
                      Cues.CANCER_AGE),
                  "",
                  "Cytology from more than 10 mL, processed within 30 minutes; a second sample if"
                      + " negative.")
              .saying((o, v) -> sugar(o)));

  private static final Trigger LYMPHOMA =
      all(
          any(Cues.OLDER, Cues.IMMUNOCOMPROMISED),
          Cues.CELLS,
          Trigger.from(Quantity.MONONUCLEAR_SHARE, "urgent.lymphoma.mononuclear.from"),
          any(
              over(Quantity.PROTEIN, "urgent.lymphoma.protein.over"),
              Cues.LACTATE_ABOVE,
              all(Cues.above(FindingCode.IGM_FRACTION), Cues.NO_BANDS)));

  private static final String LYMPHOMA_SAY =
      "Lymphoma possible. Ask neuro-oncology before steroids, if the state allows.";
  private static final String LYMPHOMA_ACT =
      "Neuro-oncology. Flow cytometry, MYD88, IL-10, eye examination; biopsy.";

  static final UrgentRule LYMPHOMA_POSSIBLE =
      UrgentRule.of(
          "lymphoma-possible",
          Grade.of(Tier.T1, all(LYMPHOMA, Cues.STEROIDS_PLANNED), LYMPHOMA_SAY, LYMPHOMA_ACT),
          Grade.of(Tier.T2, LYMPHOMA, LYMPHOMA_SAY, LYMPHOMA_ACT));

  private static final Trigger PRESSURE =
      all(
          where(
              OtherRules::isChild,
              any(
                  Trigger.from(Quantity.PRESSURE, "urgent.pressure.child.from"),
                  all(
                      Trigger.from(Quantity.PRESSURE, "urgent.pressure.child-calm.from"),
                      stated("not sedated", "sedation", OtherRules::isAwake),
                      under(Quantity.BODY_MASS_INDEX, "urgent.pressure.obese.from"))),
              Trigger.from(Quantity.PRESSURE, "urgent.pressure.adult.from")),
          unless(Cues.SITTING));

  private static final String PRESSURE_ACT = "Eye clinic and neurology. MRI with venography.";

  static final UrgentRule PRESSURE_RAISED =
      UrgentRule.of(
          "pressure-raised",
          Grade.of(
                  Tier.T0,
                  all(PRESSURE, any(Cues.sign(Sign.VISUAL_LOSS), Cues.AWAKE_NOT, Cues.SIXTH_NERVE)),
                  "",
                  PRESSURE_ACT)
              .saying((o, v) -> pressure(o, "now")),
          Grade.of(Tier.T1, PRESSURE, "", PRESSURE_ACT).saying((o, v) -> pressure(o, "today")));

  static final UrgentRule PRESSURE_LOW =
      UrgentRule.of(
          "pressure-low",
          Grade.of(
              Tier.T2,
              under(Quantity.PRESSURE, "urgent.pressure.low.under"),
              "Low pressure ({values}): leak, block below, or needle position.",
              "Look for signs of a spinal block."));

  static final Trigger BLOCK =
      any(
          Trigger.from(Quantity.PROTEIN, "urgent.block.protein.from"),
          over(Quantity.ALBUMIN_QUOTIENT, "urgent.block.albumin-quotient.over"),
          all(
              Cues.XANTHOCHROMIC,
              stated("the fluid clotted", "clotted", o -> o.results().csf().looked().clotted())),
          all(
              any(
                  Trigger.from(Quantity.PROTEIN, "urgent.block.protein-with-signs.from"),
                  stated("a dry tap", "complications", OtherRules::dryTap)),
              LEGS));

  static final UrgentRule SPINAL_BLOCK =
      UrgentRule.of(
          "spinal-block",
          Grade.now(
              BLOCK,
              "Spinal block until shown otherwise: {values}. Whole-spine MRI now.",
              "Neurosurgery."));

  private static final Trigger MUCH_PROTEIN_FEW_CELLS =
      all(
          over(Quantity.PROTEIN, "urgent.gbs.protein.over"),
          stated("", "total-protein", OtherRules::isProteinAbove),
          under(Quantity.LEUKOCYTES, "urgent.gbs.leukocytes.under"),
          unless(Cues.LOCAL_BANDS),
          unless(BLOCK));
  private static final Trigger WEAKNESS = Cues.sign(Sign.ASCENDING_WEAKNESS);

  static final UrgentRule PROTEIN_WITHOUT_CELLS =
      UrgentRule.of(
          "protein-without-cells",
          new Grade(
              Tier.T0,
              false,
              all(MUCH_PROTEIN_FEW_CELLS, WEAKNESS),
              (o, v) -> "High protein, few cells: examine strength, reflexes and breathing now.",
              "Neurology. Vital capacity, nerve conduction."),
          Grade.of(
              Tier.T2,
              all(MUCH_PROTEIN_FEW_CELLS, stated("", "ascendingWeakness", OtherRules::isUnasked)),
              "High protein, few cells: ask about ascending weakness.",
              "Neurology. Vital capacity and nerve conduction if there is any."));

  static final UrgentRule AUTOIMMUNE =
      UrgentRule.of(
          "autoimmune-encephalitis-possible",
          Grade.of(
              Tier.T1,
              all(
                  under(Quantity.ONSET_DAYS, "urgent.autoimmune.onset-days.under"),
                  Cues.DROWSY,
                  any(
                      over(Quantity.LEUKOCYTES, "urgent.autoimmune.leukocytes.over"),
                      Cues.SEIZURE,
                      stated("focal signs", "focalSigns", o -> o.setting().focalSigns()))),
              "Autoimmune encephalitis possible: neuronal antibodies in CSF and serum.",
              "After herpes encephalitis has been dealt with."));

  private static final Trigger QA_HIGH =
      over(Quantity.ALBUMIN_QUOTIENT, "urgent.sarcoid.albumin-quotient.over");

  static final UrgentRule SARCOID =
      UrgentRule.of(
          "sarcoid-possible",
          Grade.of(
              Tier.T2,
              all(
                  any(QA_HIGH, Cues.GLUCOSE_RATIO_LOW, Cues.LACTATE_ABOVE),
                  over(Quantity.LEUKOCYTES, "urgent.sarcoid.leukocytes.over"),
                  Cues.NO_BANDS),
              "Neurosarcoidosis possible ({values}): chest imaging.",
              "Chest CT or PET, contrast MRI, tissue; a normal ACE settles nothing."));

  static final UrgentRule EOSINOPHILS =
      UrgentRule.of(
          "eosinophils",
          Grade.of(
              Tier.T1,
              any(
                  Trigger.from(Quantity.EOSINOPHIL_SHARE, "urgent.eosinophils.share.from"),
                  Trigger.from(Quantity.EOSINOPHILS, "urgent.eosinophils.from")),
              "Eosinophils ({values}): parasite, fungus, drug, lymphoma, shunt.",
              "Travel history, serology."));

  static final UrgentRule PML =
      UrgentRule.of(
          "pml-possible",
          Grade.of(
              Tier.T1,
              all(Cues.DEPLETED, Cues.NEW_DEFICIT),
              "PML possible: MRI and JC virus PCR (sensitive assay).",
              "MS centre."));

  static final UrgentRule QUIET_LOW_SUGAR =
      UrgentRule.of(
          "low-sugar-quiet",
          Grade.of(
              Tier.T2,
              all(
                  where(
                      Observed::isInfant,
                      stated("", "glucose-ratio", o -> Answer.NO),
                      under(Quantity.GLUCOSE_RATIO, "urgent.quiet.glucose-ratio.under")),
                  under(Quantity.LEUKOCYTES, "leukocytes.upper"),
                  stated("lactate not raised", "lactate", OtherRules::isLactateQuiet),
                  under(Quantity.SERUM_GLUCOSE, "urgent.quiet.serum-glucose.under")),
              "Low sugar, quiet fluid ({values}): transport defect, or late analysis; repeat fasting.",
              "Glucose in both after 4 to 6 hours without food; gene test."));

  /** The last row: it holds when no other does. */
  static final UrgentRule MANY_CELLS =
      UrgentRule.of(
          "many-cells",
          Grade.of(
              Tier.T2,
              any(
                  over(Quantity.LEUKOCYTES, "urgent.many-cells.over"),
                  all(
                      over(Quantity.LEUKOCYTES, "urgent.many-cells.with-sign.over"),
                      any(QA_HIGH, Cues.NO_BANDS))),
              "{values}: unusual in MS; infection and others first.",
              "PCR, Borrelia, syphilis, HIV, TB, MOG, AQP4."));

  private OtherRules() {}

  private static String yellow(Observed observed) {
    return SUDDEN_HEADACHE.answer(observed) == Answer.NO
        ? "Yellow or bloody fluid without a sudden headache: protein, bilirubin."
        : "Yellow or bloody fluid: ask for sudden headache; then protein, bilirubin.";
  }

  private static String sugar(Observed observed) {
    return (Cues.GLUCOSE_RATIO_LOW.answer(observed).isYes() ? "Low sugar" : "Raised lactate")
        + " without a microbe: think of tumour cells, TB, fungi, sarcoid.";
  }

  /** Where anything was measured in the fluid it was no dry tap, unless somebody says so. */
  private static Answer dryTap(Observed observed) {
    Answer said = observed.setting().dryTap();
    boolean isMeasured =
        observed.results().results().keySet().stream().anyMatch(s -> s.in() == Compartment.CSF);
    return said.isKnown() || !isMeasured ? said : Answer.NO;
  }

  private static boolean isChild(Observed observed) {
    return under(Quantity.AGE_YEARS, "urgent.pressure.adult.age-years").answer(observed).isYes();
  }

  private static Answer isAwake(Observed observed) {
    return switch (observed.setting().body().sedated()) {
      case YES -> Answer.NO;
      case NO -> Answer.YES;
      case UNKNOWN -> Answer.UNKNOWN;
    };
  }

  private static String pressure(Observed observed, String when) {
    String value =
        observed
            .value(Quantity.PRESSURE)
            .map(
                v ->
                    Quantity.PRESSURE.toText(
                        v.lower(), v.lower(), UnitProfile.of(observed.facts())))
            .orElse("");
    String position =
        Cues.SITTING.answer(observed) == Answer.UNKNOWN ? " Was it measured lying?" : "";
    return "Pressure raised (%s): fundi and venous imaging %s.%s".formatted(value, when, position);
  }

  private static Answer isProteinAbove(Observed observed) {
    FindingCode code =
        observed.isBloody() ? FindingCode.TOTAL_PROTEIN_CORRECTED : FindingCode.TOTAL_PROTEIN;
    Verdict verdict = observed.verdict(code);
    if (!verdict.isDecided()) {
      return over(Quantity.PROTEIN, "urgent.gbs.protein-at-any-age.over").answer(observed).isYes()
          ? Answer.YES
          : Answer.UNKNOWN;
    }
    return Cues.of(verdict == Verdict.ABOVE);
  }

  private static Answer isUnasked(Observed observed) {
    return Cues.of(!WEAKNESS.answer(observed).isKnown());
  }

  private static Answer isLactateQuiet(Observed observed) {
    return switch (Cues.LACTATE_ABOVE.answer(observed)) {
      case YES -> Answer.NO;
      case NO -> Answer.YES;
      case UNKNOWN -> Answer.UNKNOWN;
    };
  }
}
