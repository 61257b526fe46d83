package cistern.puncture.procedure;

import static cistern.puncture.procedure.QuestionGroup.ALLERGIES;
import static cistern.puncture.procedure.QuestionGroup.ARRANGEMENTS;
import static cistern.puncture.procedure.QuestionGroup.BLEEDING;
import static cistern.puncture.procedure.QuestionGroup.DONE;
import static cistern.puncture.procedure.QuestionGroup.HEADACHE;
import static cistern.puncture.procedure.QuestionGroup.HISTORY;
import static cistern.puncture.procedure.QuestionGroup.IMAGING;
import static cistern.puncture.procedure.QuestionGroup.SIGNS;
import static cistern.puncture.procedure.QuestionGroup.SPINE;
import static cistern.puncture.procedure.QuestionGroup.TECHNIQUE;
import static cistern.puncture.procedure.QuestionGroup.THROMBOSIS;

import java.util.Arrays;
import java.util.List;

/** Everything about a procedure that is answered with yes, no or unknown. */
public enum Question {
  NEW_SEIZURE(SIGNS, "newSeizure", "a new seizure within the last week"),
  CONTINUOUS_SEIZURES(SIGNS, "continuousSeizures", "continuous or uncontrolled seizures"),
  FOCAL_SIGNS(SIGNS, "focalSigns", "new focal signs"),
  PAPILLOEDEMA(SIGNS, "papilloedema", "papilloedema"),
  IMMUNOCOMPROMISED(SIGNS, "immunocompromised", "immunocompromise"),
  EARLIER_CNS_DISEASE(
      SIGNS, "earlierCnsDisease", "earlier disease of the central nervous system (mass, stroke)"),
  SITE_INFECTION(SIGNS, "siteInfection", "infection at the site of puncture"),
  SPINAL_BLOCK(SIGNS, "spinalBlock", "suspected spinal block or compression"),
  CARDIORESPIRATORY(SIGNS, "cardiorespiratoryCompromise", "cardiorespiratory compromise"),
  DECLINED(SIGNS, "declined", "a refusal by the person"),
  HERNIATION_SIGNS(SIGNS, "herniationSigns", "signs of herniation"),
  CANNOT_BE_POSITIONED(SIGNS, "cannotBePositioned", "cannot be positioned"),
  LACKS_CAPACITY(SIGNS, "lacksCapacity", "no capacity to consent"),

  MRI_REVIEWED(IMAGING, "reviewed", "brain MRI reviewed"),
  MASS_EFFECT(IMAGING, "massEffect", "mass effect"),
  HYDROCEPHALUS(IMAGING, "obstructiveHydrocephalus", "obstructive hydrocephalus"),
  TONSILLAR_DESCENT(IMAGING, "tonsillarDescent", "tonsillar descent or Chiari malformation"),
  POSTERIOR_FOSSA_LESION(IMAGING, "posteriorFossaLesion", "posterior fossa lesion"),
  CHANGED_SINCE_SCAN(IMAGING, "changedSince", "change since the scan"),

  BLEEDING_DISORDER(BLEEDING, "bleedingDisorder", "a bleeding disorder"),
  INR_NORMAL(BLEEDING, "inrNormal", "INR normal by the laboratory's own range"),
  APTT_NORMAL(BLEEDING, "apttNormal", "aPTT normal by the laboratory's own range"),

  DRUG_ELUTING_STENT(THROMBOSIS, "drugElutingStent", "drug-eluting coronary stent"),
  BARE_METAL_STENT(THROMBOSIS, "bareMetalStent", "bare-metal coronary stent"),
  VENOUS_THROMBOEMBOLISM(THROMBOSIS, "venousThromboembolism", "venous thromboembolism"),
  THROMBOSIS_ON_TREATMENT(
      THROMBOSIS, "thrombosisOnTreatment", "thromboembolism despite therapeutic anticoagulation"),
  MECHANICAL_VALVE(THROMBOSIS, "mechanicalValve", "mechanical heart valve"),
  BILEAFLET_AORTIC_VALVE(
      THROMBOSIS,
      "bileafletAorticWithoutRisk",
      "a bileaflet aortic valve without other risk factors"),
  ATRIAL_FIBRILLATION(THROMBOSIS, "atrialFibrillation", "atrial fibrillation"),
  STROKE_OR_TIA(THROMBOSIS, "strokeOrTia", "stroke or TIA"),

  LUMBAR_FUSION(SPINE, "lumbarFusion", "lumbar fusion or hardware"),
  LAMINECTOMY(SPINE, "laminectomy", "laminectomy"),
  OTHER_SPINE_SURGERY(SPINE, "otherSurgery", "other surgery of the lumbar spine"),
  SPINE_ANOMALY(SPINE, "anomaly", "congenital anomaly of the lumbar spine"),
  DYSRAPHISM(SPINE, "dysraphism", "suspected dysraphism or a low cord"),
  TETHERED_CORD(SPINE, "tetheredCord", "a tethered cord"),
  SEVERE_ARTHRITIS(SPINE, "severeArthritis", "severe degenerative change or arthritis"),
  SCOLIOSIS(SPINE, "scoliosis", "scoliosis"),
  FAILED_ATTEMPT(SPINE, "failedAttempt", "an earlier attempt failed"),
  LANDMARKS_NOT_FELT(SPINE, "landmarksNotFelt", "landmarks that cannot be felt"),

  LATEX(ALLERGIES, "latex", "latex"),
  IODINE(ALLERGIES, "iodine", "iodine"),
  CHLORHEXIDINE(ALLERGIES, "chlorhexidine", "chlorhexidine"),
  LIDOCAINE(ALLERGIES, "lidocaine", "lidocaine"),

  STYLET_REPLACED(TECHNIQUE, "styletReplaced", "stylet put back before withdrawal"),
  BEVEL_ACROSS(TECHNIQUE, "bevelAcross", "bevel across the fibres (cutting needle)"),

  PREVIOUS_PUNCTURE_HEADACHE(
      HISTORY, "previousPunctureHeadache", "headache after an earlier dural puncture"),
  HEADACHE_DISORDER(HISTORY, "headacheDisorder", "a headache disorder"),

  SERUM_PLANNED(ARRANGEMENTS, "serumPlanned", "serum at the same visit"),
  CONSENT(ARRANGEMENTS, "consent", "consent"),

  TRAUMATIC(DONE, "traumatic", "traumatic (bloody) tap"),
  SEDATION(DONE, "sedation", "sedation"),
  LEGS_FLEXED(DONE, "legsFlexed", "legs flexed during the pressure reading"),

  WORSE_UPRIGHT(HEADACHE, "worseUpright", "worse within minutes of being upright"),
  BETTER_LYING(HEADACHE, "betterLying", "better within minutes of lying down"),
  NAUSEA(HEADACHE, "nausea", "nausea"),
  PHOTOPHOBIA(HEADACHE, "photophobia", "light hurts"),
  TINNITUS(HEADACHE, "tinnitus", "ringing in the ears"),
  BETTER_EXPLANATION(HEADACHE, "betterExplanation", "another cause explains it better"),
  PRESSURE_LOW(HEADACHE, "pressureLow", "CSF pressure measured under 60 mm"),
  LEAK_ON_IMAGING(HEADACHE, "leakOnImaging", "a leak shown on imaging"),
  PATCHED(HEADACHE, "patched", "a blood patch was done"),
  POST_PARTUM(HEADACHE, "postPartum", "birth within the last six weeks"),
  HORMONES(HEADACHE, "hormones", "hormone treatment or contraception"),
  DEHYDRATION(HEADACHE, "dehydration", "dehydration"),
  BACTERAEMIA(HEADACHE, "bacteraemia", "bacteria in the blood"),
  INFLAMMATION(HEADACHE, "inflammation", "CRP or leukocytes raised without a reason"),
  SUBDURAL_WITH_SHIFT(HEADACHE, "subduralWithShift", "a subdural haematoma with shift"),
  BLOOD_CANCER(HEADACHE, "bloodCancer", "leukaemia or untreated blood cancer"),
  HIV_WITH_INFECTION(HEADACHE, "hivWithInfection", "HIV with an infection"),
  PATCH_CONSENT(HEADACHE, "patchConsent", "consent to a blood patch");

  private final QuestionGroup group;
  private final String field;
  private final String term;

  Question(QuestionGroup group, String field, String term) {
    this.group = group;
    this.field = field;
    this.term = term;
  }

  /** The questions it belongs to. */
  public QuestionGroup group() {
    return group;
  }

  /** The field of the work-up. */
  public String field() {
    return field;
  }

  /** What is asked, as a noun phrase. */
  public String term() {
    return term;
  }

  /** The questions of a group, in order. */
  public static List<Question> of(QuestionGroup group) {
    return Arrays.stream(values()).filter(q -> q.group == group).toList();
  }
}
