package cistern.criteria;

import cistern.analysis.Puncture;
import cistern.bands.BandPattern;
import cistern.bands.BandReading;
import cistern.bands.BandVerdict;
import cistern.fact.Facts;
import cistern.fact.Grounds;
import cistern.finding.Finding;
import cistern.finding.FindingCode;
import cistern.finding.Printed;
import cistern.measurement.Answer;
import cistern.measurement.Interval;
import java.util.ArrayList;
import java.util.List;

/**
 * Whether the fluid counts as positive: bands for both editions, and either marker for 2024
 * (Deisenhammer 2025, eBioMedicine 120:105905). IgG index, rate and fraction never count.
 *
 * @param bands CSF-only bands
 * @param csf bands or κ index
 * @param bandsGrounds what the first rests on
 * @param csfGrounds what the second rests on
 * @param words both markers in words
 * @param remarks what has to be said beside them
 */
public record CsfPositivity(
    Answer bands,
    Answer csf,
    Grounds bandsGrounds,
    Grounds csfGrounds,
    Words words,
    List<String> remarks) {

  private static final String EQUIVOCAL = "csf-positive.bands.equivocal";
  private static final String UNMEASURED = "csf-positive.2024.bands-negative.kappa-unmeasured";
  private static final String GREY = "csf-positive.2024.bands-unknown.kappa-grey";
  private static final String GREY_ZONE = "kappa-index.grey-zone.upper";
  private static final String DOUBTED = "csf-positive.2024.kappa-doubted";
  private static final String LOW = "csf-positive.2024.bands-unknown.kappa-low";

  /** Copies the remarks. */
  public CsfPositivity {
    remarks = List.copyOf(remarks);
  }

  /** The positivity of one puncture. */
  public static CsfPositivity of(Puncture puncture, Restraint restraint, Facts facts) {
    BandReading reading = puncture.bands();
    Finding kappaIndex = puncture.finding(FindingCode.KAPPA_INDEX);
    List<String> remarks = new ArrayList<>();
    Marker bands =
        restraint.isBandsUnknown()
            ? Marker.measured(Answer.UNKNOWN)
            : bands(puncture, facts, remarks);
    KappaIndex kappa =
        restraint.isKappaUnknown()
            ? KappaIndex.UNMEASURED
            : KappaIndex.of(puncture.panel(), kappaIndex, facts);
    boolean isAlsoRaised = kappa == KappaIndex.POSITIVE && !restraint.kappaRaisedAlsoBy().isEmpty();
    if (isAlsoRaised) {
      remarks.add("κ index raised, also by " + String.join(" and ", restraint.kappaRaisedAlsoBy()));
    }
    Marker csf =
        isAlsoRaised && bands.answer() != Answer.YES
            ? policy(DOUBTED, facts).and(kappaIndex.grounds())
            : csf(bands, kappa, kappaIndex, facts);
    remarks.addAll(discordance(bands.answer(), kappa, kappaIndex, facts));
    Words words = new Words(words(reading), words(kappaIndex, facts));
    return new CsfPositivity(
        bands.answer(), csf.answer(), bands.grounds(), csf.grounds(), words, remarks);
  }

  /** The same with the fluid positive, or negative, in both editions. */
  public CsfPositivity with(Answer both) {
    return new CsfPositivity(both, both, bandsGrounds, csfGrounds, words, remarks);
  }

  /** The marker that an item asks for, in words, with its cut-off. */
  String shown(Item item) {
    return item == Item.BANDS ? words.bands : words.bands + "; " + words.kappa;
  }

  /**
   * Both markers in words, each with its cut-off.
   *
   * @param bands the bands
   * @param kappa the κ index
   */
  public record Words(String bands, String kappa) {}

  private static String words(BandReading reading) {
    if (!reading.isReported()) {
      return "bands not reported";
    }
    String count =
        reading.counts().csfOnly().isPresent()
            ? count(reading.counts().csfOnly().getAsInt())
            : "bands " + reading.verdict().word();
    return "%s at a cut-off of %d".formatted(count, reading.cutOff());
  }

  private static String count(int csfOnly) {
    return csfOnly == 1 ? "1 CSF-only band" : csfOnly + " CSF-only bands";
  }

  private static String words(Finding kappa, Facts facts) {
    String cutOff = Printed.of(kappa.code(), facts.number("kappa-index.upper"));
    return kappa
        .value()
        .map(v -> "κ index %s at a cut-off of %s".formatted(words(kappa.code(), v), cutOff))
        .orElse("κ index not measured");
  }

  private static String words(FindingCode code, Interval value) {
    return value.isExact()
        ? Printed.of(code, value.exactly())
        : "between %s and %s"
            .formatted(Printed.of(code, value.lower()), Printed.of(code, value.upper()));
  }

  /**
   * An answer and what it rests on.
   *
   * @param answer the answer
   * @param grounds the facts behind it
   */
  private record Marker(Answer answer, Grounds grounds) {
    static Marker measured(Answer answer) {
      return new Marker(answer, Grounds.MEASURED);
    }

    Marker and(Grounds more) {
      return new Marker(answer, grounds.and(more));
    }
  }

  private static Marker bands(Puncture puncture, Facts facts, List<String> remarks) {
    BandReading reading = puncture.bands();
    if (!reading.isReported()) {
      return Marker.measured(Answer.UNKNOWN);
    }
    List<String> doubts = doubts(puncture);
    if (!doubts.isEmpty()) {
      remarks.addAll(doubts);
      return Marker.measured(Answer.UNKNOWN);
    }
    reading.pattern().map(CsfPositivity::remark).filter(r -> !r.isEmpty()).ifPresent(remarks::add);
    return switch (reading.verdict()) {
      case POSITIVE -> new Marker(Answer.YES, reading.grounds());
      case NEGATIVE -> new Marker(Answer.NO, reading.grounds());
      case BORDERLINE -> {
        remarks.add(
            "fewer CSF-only bands than the cut-off of %d: equivocal; a κ index on the same sample"
                    .formatted(reading.cutOff())
                + " or a repeat puncture could help");
        yield policy(EQUIVOCAL, facts).and(reading.grounds());
      }
      case UNDETERMINED -> Marker.measured(Answer.UNKNOWN);
    };
  }

  private static List<String> doubts(Puncture puncture) {
    BandReading reading = puncture.bands();
    List<String> doubts = new ArrayList<>();
    if (puncture.isPairInvalid()) {
      doubts.add("bands not used: CSF and serum were drawn too far apart");
    }
    if (!reading.isConfirmed()) {
      doubts.add("bands not used: the reading of the gel is to be confirmed by a person");
    }
    if (reading.verdict() == BandVerdict.POSITIVE
        && reading.pattern().filter(p -> p == BandPattern.LADDER).isPresent()) {
      doubts.add("bands not used: CSF-only bands beside a monoclonal ladder; review the gel");
    }
    return doubts;
  }

  private static Marker csf(Marker bands, KappaIndex kappa, Finding index, Facts facts) {
    if (bands.answer() == Answer.YES) {
      return bands;
    }
    if (kappa == KappaIndex.POSITIVE) {
      return new Marker(Answer.YES, index.grounds());
    }
    if (bands.answer() == Answer.NO) {
      return kappa.isUnder()
          ? bands.and(index.grounds())
          : policy(UNMEASURED, facts).and(bands.grounds());
    }
    return switch (kappa) {
      case GREY -> policy(GREY, facts).and(index.grounds());
      case LOW -> policy(LOW, facts).and(index.grounds());
      case POSITIVE, UNMEASURED -> bands;
    };
  }

  private static Marker policy(String key, Facts facts) {
    Answer answer = Answer.parse(facts.word(key)).orElse(Answer.UNKNOWN);
    return new Marker(answer, facts.grounds(key));
  }

  private static String remark(BandPattern pattern) {
    return switch (pattern) {
      case NORMAL, LOCAL, LOCAL_AND_SYSTEMIC -> "";
      case SYSTEMIC -> "the bands are alike in CSF and serum";
      case LADDER -> "a monoclonal ladder: serum immunofixation";
    };
  }

  private static List<String> discordance(
      Answer bands, KappaIndex kappa, Finding index, Facts facts) {
    if (bands == Answer.YES && kappa.isUnder()) {
      return List.of("discordant: CSF-only bands, but the κ index is under the cut-off");
    }
    if (bands == Answer.NO && kappa == KappaIndex.POSITIVE) {
      return List.of("discordant: no CSF-only bands demonstrated, but the κ index is raised");
    }
    boolean isGrey =
        kappa == KappaIndex.GREY
            || (kappa == KappaIndex.POSITIVE && isWithinGreyZone(index, facts));
    return bands == Answer.UNKNOWN && isGrey
        ? List.of("the κ index lies in its grey zone: bands on the same sample are advisable")
        : List.of();
  }

  private static boolean isWithinGreyZone(Finding index, Facts facts) {
    return index.number().isPresent() && index.number().getAsDouble() <= facts.number(GREY_ZONE);
  }
}
