package cistern.clinic.casework;

import cistern.clinic.audit.Digest;
import cistern.clinic.status.OpenCase;
import cistern.clinic.web.PageRequest;
import cistern.exchange.json.Json;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.SequencedMap;

/**
 * What the signing person writes for the letter.
 *
 * @param to whom it goes
 * @param salutation how it begins
 * @param conclusion in the person's own words
 */
record LetterFields(String to, String salutation, String conclusion) {

  private static final String LETTER = "letter";
  private static final List<String> NAMES = List.of("to", "salutation", "conclusion");

  /** As a file holds it. */
  static LetterFields of(Json.Structure file) {
    Json.Structure letter = letter(file);
    return new LetterFields(
        text(letter, NAMES.get(0)), text(letter, NAMES.get(1)), text(letter, NAMES.get(2)));
  }

  /** As it is typed; a form that does not ask for it changes nothing. */
  static LetterFields of(PageRequest visit, OpenCase open) {
    return visit.fields().containsKey(NAMES.get(0))
        ? new LetterFields(
            visit.field(NAMES.get(0)), visit.field(NAMES.get(1)), visit.field(NAMES.get(2)))
        : of(open.file());
  }

  private static Json.Structure letter(Json.Structure file) {
    return file.members().get(LETTER) instanceof Json.Structure letter
        ? letter
        : new Json.Structure(new LinkedHashMap<>());
  }

  private static String text(Json.Structure letter, String name) {
    return letter.members().get(name) instanceof Json.Text text ? text.value() : "";
  }

  /** A file with it. */
  Json.Structure in(Json.Structure file) {
    SequencedMap<String, Json> letter = new LinkedHashMap<>(letter(file).members());
    set(letter, NAMES.get(0), to);
    set(letter, NAMES.get(1), salutation);
    set(letter, NAMES.get(2), conclusion);
    SequencedMap<String, Json> members = new LinkedHashMap<>(file.members());
    if (letter.isEmpty()) {
      members.remove(LETTER);
    } else {
      members.put(LETTER, new Json.Structure(letter));
    }
    return new Json.Structure(members);
  }

  private static void set(SequencedMap<String, Json> letter, String name, String text) {
    if (text.isBlank()) {
      letter.remove(name);
    } else {
      letter.put(name, new Json.Text(text));
    }
  }

  /** What tells that these words, on a version of a case and under some rules, were seen. */
  String seen(long version, String madeBy) {
    return Digest.of(Long.toString(version), madeBy, to, salutation, conclusion);
  }
}
