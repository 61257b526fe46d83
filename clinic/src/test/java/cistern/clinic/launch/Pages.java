package cistern.clinic.launch;

import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import nu.validator.validation.SimpleDocumentValidator;
import org.xml.sax.ErrorHandler;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;
import org.xml.sax.SAXParseException;

/** Pages held against the standard of HTML, by the checker of those who maintain its rules. */
final class Pages {

  private static final String SCHEMA = "http://s.validator.nu/html5-rdfalite.rnc";

  /** Of CSS Containment Module Level 3 (W3C), which is newer than the checker's rules of CSS. */
  private static final Set<String> NEWER_THAN_THE_RULES =
      Set.of(
          "CSS: “container-type”: Property “container-type” doesn't exist.",
          "CSS: Unrecognized at-rule “@container”");

  private final Faults faults = new Faults();
  private final SimpleDocumentValidator checker = new SimpleDocumentValidator(false, false, false);
  private final Map<String, List<String>> faultsByPage = new TreeMap<>();
  private int checked;

  private Pages() throws Exception {
    checker.setUpMainSchema(SCHEMA, faults);
    checker.setUpValidatorAndParsers(faults, true, false);
  }

  /** A checker with its rules read: no network is asked. */
  static Pages of() {
    try {
      return new Pages();
    } catch (Exception e) {
      throw new IllegalStateException(e);
    }
  }

  /** Every fault of one page. */
  private static final class Faults implements ErrorHandler {
    private final List<String> found = new ArrayList<>();

    @Override
    public void warning(SAXParseException warning) {
      // Advice, such as to name a language otherwise; the standard allows it.
    }

    @Override
    public void error(SAXParseException error) {
      if (!NEWER_THAN_THE_RULES.contains(error.getMessage())) {
        found.add(error.getMessage());
      }
    }

    @Override
    public void fatalError(SAXParseException error) {
      found.add(error.getMessage());
    }
  }

  /** Checks a page. */
  void check(String name, String html) {
    faults.found.clear();
    try {
      InputSource source = new InputSource(new StringReader(html));
      source.setSystemId("page:" + name);
      checker.checkHtmlInputSource(source);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (SAXException e) {
      faults.found.add(String.valueOf(e.getMessage()));
    }
    checked++;
    if (!faults.found.isEmpty()) {
      faultsByPage.put(name, List.copyOf(faults.found));
    }
  }

  /** The pages that are not valid, each with what is wrong. */
  Map<String, List<String>> faults() {
    return faultsByPage;
  }

  /** How many were checked. */
  int checked() {
    return checked;
  }
}
