package cistern.clinic.form;

import cistern.exchange.json.Json;
import cistern.report.markup.Element;
import java.time.ZoneId;
import java.util.Optional;

/** Something that can be typed into a case. */
public sealed interface Typable permits FormField, ResultField {

  /** The section in which its heading is folded away; nothing where that stands by itself. */
  Optional<String> section();

  /** The heading that it stands under. */
  String group();

  /** Its name in the form. */
  String key();

  /** What is asked. */
  String label();

  /** What stands in the field for a work-up file. */
  String toTyped(Json.Structure file, ZoneId zone);

  /** The file with what is typed. */
  Json.Structure with(Json.Structure file, String typed, ZoneId zone);

  /** Whether a problem at a place of the file is about this field. */
  boolean isAt(String place);

  /** Whether yes or no is asked. */
  boolean isQuestion();

  /** What it holds as a line says it. */
  String toWords(String typed);

  /** The field itself, with what is typed. */
  Element toControl(String typed);
}
