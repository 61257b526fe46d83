package cistern.interpretation;

import cistern.bands.BandReport;
import cistern.finding.Problem;
import cistern.measurement.Answer;
import cistern.panel.Panel;
import cistern.puncture.procedure.Procedure;
import cistern.weighing.ClinicalPicture;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * One puncture with everything that is known about it.
 *
 * @param id {@code [A-Za-z0-9._-]{1,64}}
 * @param remarks what the file says about itself
 * @param panel the results
 * @param bands what was reported of the gel
 * @param clinical what the clinician knows beside the fluid
 * @param procedure what was said of the puncture itself
 * @param problems what reading the file already showed: kept, but not understood
 */
public record Workup(
    String id,
    Remarks remarks,
    Panel panel,
    BandReport bands,
    ClinicalPicture clinical,
    Procedure procedure,
    List<Problem> problems) {

  /** Copies the problems. */
  public Workup {
    problems = List.copyOf(problems);
  }

  /** A work-up without remarks, evidence and procedure. */
  public Workup(String id, Panel panel, BandReport bands, List<Problem> problems) {
    this(id, Remarks.NONE, panel, bands, ClinicalPicture.UNKNOWN, Procedure.UNKNOWN, problems);
  }

  /** This work-up with another band report: a gel that has been read. */
  public Workup withBands(BandReport read) {
    return new Workup(id, remarks, panel, read, clinical, procedure, problems);
  }

  /** This work-up with more problems that reading it showed. */
  public Workup withProblems(List<Problem> more) {
    List<Problem> all = Stream.concat(problems.stream(), more.stream()).toList();
    return new Workup(id, remarks, panel, bands, clinical, procedure, all);
  }

  /** This work-up with what the clinician knows beside the fluid. */
  public Workup withClinical(ClinicalPicture known) {
    return new Workup(id, remarks, panel, bands, known, procedure, problems);
  }

  /** This work-up with something else said of the puncture. */
  public Workup withProcedure(Procedure said) {
    return new Workup(id, remarks, panel, bands, clinical, said, problems);
  }

  /**
   * What a work-up says about itself.
   *
   * @param isInvented whether the data are invented
   * @param question what the referrer asks
   * @param letter how the letter to the referrer is to be framed
   * @param laboratory who measured, in whose units papers are written
   */
  public record Remarks(
      boolean isInvented, Optional<String> question, Letter letter, Optional<String> laboratory) {
    /** Nothing said. */
    public static final Remarks NONE =
        new Remarks(false, Optional.empty(), Letter.UNKNOWN, Optional.empty());
  }

  /**
   * What a person wrote for the letter.
   *
   * @param to whom it goes
   * @param salutation how it begins
   * @param conclusion the signing person's own conclusion
   * @param by who signs
   * @param releaseProbability whether a probability may stand in it
   */
  public record Letter(
      Optional<String> to,
      Optional<String> salutation,
      Optional<String> conclusion,
      Optional<String> by,
      Answer releaseProbability) {
    /** Nothing said. */
    public static final Letter UNKNOWN =
        new Letter(
            Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Answer.UNKNOWN);
  }
}
