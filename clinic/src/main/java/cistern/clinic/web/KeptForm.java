package cistern.clinic.web;

import static cistern.clinic.web.Html.hidden;

import cistern.report.markup.Element;
import cistern.report.markup.Node;
import jakarta.servlet.http.HttpServletRequest;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

/**
 * A form whose session ended before it was sent: it stays in the page until somebody has signed in,
 * and is sent again by a button. Nothing of it is kept by the program. A file does not go with it:
 * such a form is opened again with what was typed beside the file.
 *
 * @param path to which it was sent
 * @param fields what was typed, without the token and without secrets
 * @param isWithFile whether a file belongs to it, which has to be chosen again
 */
public record KeptForm(String path, Map<String, List<String>> fields, boolean isWithFile) {

  private static final String PATH = "kept-path";
  private static final String FILE = "kept-file";
  private static final String YES = "yes";
  private static final String FIELD = "kept.";
  private static final Set<String> LEFT_OUT = Set.of("_csrf", "password", "current", "code", PATH);
  private static final Set<String> ENTRANCES = Set.of("/sign-in", "/code", "/first", "/sign-out");

  /** Copies the fields. */
  public KeptForm {
    fields = Map.copyOf(fields);
  }

  /**
   * The form of a request, when a page of this program sent it: another site's would not be sent
   * again for it.
   */
  static Optional<KeptForm> of(HttpServletRequest request) {
    String path = request.getRequestURI();
    String type = String.valueOf(request.getContentType());
    boolean isWithFile = type.startsWith("multipart/form-data");
    boolean isForm = isWithFile || type.startsWith("application/x-www-form-urlencoded");
    if (!isForm || !LocalPath.isOne(path) || ENTRANCES.contains(path) || !isFromHere(request)) {
      return Optional.empty();
    }
    Map<String, List<String>> fields = new TreeMap<>();
    request
        .getParameterMap()
        .forEach(
            (name, values) -> {
              if (!LEFT_OUT.contains(name)) {
                fields.put(name, Arrays.stream(values).map(PageRequest::plain).toList());
              }
            });
    return Optional.of(new KeptForm(path, fields, isWithFile));
  }

  /** Whether the browser says that a page of this very address sent it. */
  private static boolean isFromHere(HttpServletRequest request) {
    String origin = request.getHeader("Origin");
    return origin != null
        && origin.replaceFirst("^https?://", "").equals(request.getHeader("Host"));
  }

  /** The form that a page for signing in carries. */
  public static Optional<KeptForm> of(PageRequest visit) {
    String path = visit.field(PATH);
    if (!LocalPath.isOne(path)) {
      return Optional.empty();
    }
    Map<String, List<String>> fields = new TreeMap<>();
    visit
        .fields()
        .forEach(
            (name, values) -> {
              if (name.startsWith(FIELD)) {
                fields.put(name.substring(FIELD.length()), values);
              }
            });
    return Optional.of(new KeptForm(path, fields, visit.field(FILE).equals(YES)));
  }

  /** What was typed in a field; empty when nothing was. */
  public String field(String name) {
    return fields.getOrDefault(name, List.of()).stream().findFirst().orElse("").strip();
  }

  /** Its fields for the page on which somebody signs in. */
  Node toCarried() {
    List<Node> all = new ArrayList<>(List.of(hidden(PATH, path)));
    if (isWithFile) {
      all.add(hidden(FILE, YES));
    }
    fields.forEach((name, values) -> values.forEach(v -> all.add(hidden(FIELD + name, v))));
    return cistern.report.markup.Fragment.of(all.toArray(Node[]::new));
  }

  /** What was typed, and a button that sends it as it was first sent. */
  public Node toSendAgain(PageRequest visit) {
    List<List<Node>> rows = new ArrayList<>();
    List<Element> carried = new ArrayList<>();
    new TreeMap<>(fields)
        .forEach(
            (name, values) ->
                values.forEach(
                    value -> {
                      carried.add(hidden(name, value));
                      if (!value.isBlank()) {
                        rows.add(List.of(Html.text(name), Html.text(value)));
                      }
                    }));
    return Html.division(
        "kept",
        Html.paragraph(
            "You are signed in. Nothing of what you sent before was done yet, and nothing is lost:"
                + " here it is."),
        rows.isEmpty()
            ? Html.nothing()
            : Html.table("What you typed", List.of("Field", "Typed"), rows),
        visit.form(path).with(carried).with(Html.button("Send it now")),
        Html.paragraph("").with(Html.link("/", "Leave it")));
  }
}
