package cistern.statement;

import cistern.bands.BandVerdict;
import cistern.finding.Finding;
import java.util.List;
import java.util.OptionalInt;
import java.util.stream.Collectors;

/** Whether antibody is made inside the CNS, as far as this puncture tells. */
public sealed interface Conclusion extends Statement {

  /**
   * Bands in CSF alone: the key finding.
   *
   * @param csfOnly how many, when counted
   * @param cutOff how many count as positive
   * @param isConfirmed whether a person stands behind the reading
   * @param support other findings above their limits
   * @param isMsUnsaid whether nothing is to be said of MS here
   */
  record SynthesisDemonstrated(
      OptionalInt csfOnly,
      int cutOff,
      boolean isConfirmed,
      List<Finding> support,
      boolean isMsUnsaid)
      implements Conclusion {

    /** Copies the findings. */
    public SynthesisDemonstrated {
      support = List.copyOf(support);
    }

    @Override
    public String code() {
      return "synthesis-demonstrated";
    }

    @Override
    public String text() {
      String bands =
          csfOnly.isPresent()
              ? "%d CSF-only band%s (cut-off %d)"
                  .formatted(csfOnly.getAsInt(), csfOnly.getAsInt() == 1 ? "" : "s", cutOff)
              : "CSF-only bands";
      String reading =
          isConfirmed ? "" : " The gel was read automatically and is to be confirmed by a person.";
      return "IgG is made inside the CNS: "
          + bands
          + also(support)
          + (isMsUnsaid ? "." : ". This supports, but is not specific for, multiple sclerosis.")
          + reading;
    }
  }

  /**
   * Numbers above their limits without bands that decide.
   *
   * @param by the findings above their limits
   * @param bands what the bands say
   */
  record SynthesisSuggested(List<Finding> by, BandVerdict bands) implements Conclusion {

    /** Copies the findings. */
    public SynthesisSuggested {
      by = List.copyOf(by);
    }

    @Override
    public String code() {
      return "synthesis-suggested";
    }

    @Override
    public String text() {
      String names = by.stream().map(f -> f.code().term()).collect(Collectors.joining(", "));
      String beside =
          switch (bands) {
            case NEGATIVE -> "CSF-only bands were not demonstrated";
            case BORDERLINE -> "the bands are equivocal";
            case UNDETERMINED -> "the bands are not known";
            case POSITIVE -> "bands are present";
          };
      return "Antibody made inside the CNS is suggested by what lies above its limit (%s), while %s."
          .formatted(names, beside);
    }
  }

  /**
   * A single band, or fewer than the cut-off.
   *
   * @param csfOnly how many
   * @param cutOff how many would be positive
   */
  record SynthesisEquivocal(int csfOnly, int cutOff) implements Conclusion {
    @Override
    public String code() {
      return "synthesis-equivocal";
    }

    @Override
    public String text() {
      return "Equivocal: %d CSF-only band%s, under the cut-off of %d."
          .formatted(csfOnly, csfOnly == 1 ? "" : "s", cutOff);
    }
  }

  /**
   * Nothing above its limit.
   *
   * @param isFocused whether bands were looked for and found negative
   * @param isAllWithin whether nothing else lies above its limit
   * @param within the numbers that were decided
   * @param isMsUnsaid whether nothing may be said of MS
   */
  record SynthesisNotDemonstrated(
      boolean isFocused, boolean isAllWithin, List<Finding> within, boolean isMsUnsaid)
      implements Conclusion {

    /** Copies the findings. */
    public SynthesisNotDemonstrated {
      within = List.copyOf(within);
    }

    @Override
    public String code() {
      return "synthesis-not-demonstrated";
    }

    @Override
    public String text() {
      return isFocused
          ? "Antibody made inside the CNS is not demonstrated: no CSF-only bands"
              + (isAllWithin ? ", and nothing lies above its limit" : "")
              + (isMsUnsaid ? "." : ". Multiple sclerosis without CSF bands exists.")
          : "Antibody made inside the CNS is not demonstrated by the quotients; without focusing a"
              + " small synthesis is easily missed.";
    }
  }

  /**
   * No answer.
   *
   * @param reason why not
   */
  record SynthesisUndetermined(String reason) implements Conclusion {
    @Override
    public String code() {
      return "synthesis-undetermined";
    }

    @Override
    public String text() {
      return "Whether antibody is made inside the CNS is undetermined: " + reason + ".";
    }
  }

  private static String also(List<Finding> support) {
    return support.isEmpty()
        ? ""
        : "; also above the limit: "
            + support.stream().map(f -> f.code().term()).collect(Collectors.joining(", "));
  }
}
