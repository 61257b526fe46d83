package cistern.cli;

import cistern.report.patient.PatientWords;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;

/** The language of a page for the person, as it is asked for. */
final class PatientLanguage {

  static final String ENGLISH = "en";

  private PatientLanguage() {}

  /** Its words; a language without a catalogue is a wrong command line. */
  static PatientWords of(CommandSpec spec, String language) {
    return PatientWords.find(language)
        .orElseThrow(
            () ->
                new ParameterException(
                    spec.commandLine(), "There is no page for the person in this language."));
  }
}
