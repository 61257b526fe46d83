package cistern.fact;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * One entry of the bibliography: what a librarian needs to fetch it. Fields are those of the
 * Citation Style Language; an entry whose title nobody here has seen stands without one.
 *
 * @param key by which a fact row cites it
 * @param author family name of the first author, or the body that published it; may be empty
 * @param year of publication; empty when it carries none
 * @param fields every other field that is plain text, by its name in the file
 */
public record Reference(String key, String author, String year, Map<String, String> fields) {

  private static final String PUBMED = "https://pubmed.ncbi.nlm.nih.gov/";

  /** Copies the fields; an entry that nobody could find is a fault of the program. */
  public Reference {
    fields = Map.copyOf(fields);
    if (address(fields).isEmpty()) {
      throw new IllegalStateException(key + ": an entry says where to find it");
    }
  }

  /** Author, year, journal and volume or title, and its number, as a footnote says it. */
  public String toText() {
    String named =
        Stream.of(author, year).filter(w -> !w.isEmpty()).collect(Collectors.joining(" "));
    String work = journal().or(() -> field("title")).orElse("");
    return Stream.of(named, work, locator())
        .filter(w -> !w.isEmpty())
        .collect(Collectors.joining(", "));
  }

  private Optional<String> journal() {
    String volume = field("volume").map(v -> " " + v).orElse("");
    String page = volume.isEmpty() ? "" : field("page").map(p -> ":" + p).orElse("");
    return field("container-title").map(journal -> journal + volume + page);
  }

  private String locator() {
    return field("DOI")
        .map(doi -> "doi " + doi)
        .or(() -> field("PMID").map(pmid -> "PMID " + pmid))
        .or(() -> field("PMCID"))
        .or(() -> field("ISBN").map(isbn -> "ISBN " + isbn))
        .orElse("");
  }

  /** Where it is found on the network, or its ISBN. */
  public String address() {
    return address(fields).orElse("");
  }

  /** By DOI, else PubMed, its own address, its ISBN, or PubMed's search by journal and page. */
  private static Optional<String> address(Map<String, String> fields) {
    return at(fields, "DOI", "https://doi.org/")
        .or(() -> at(fields, "PMID", PUBMED).map(address -> address + "/"))
        .or(() -> at(fields, "PMCID", "https://www.ncbi.nlm.nih.gov/pmc/articles/"))
        .or(() -> at(fields, "URL", ""))
        .or(() -> at(fields, "ISBN", "ISBN "))
        .or(() -> search(fields));
  }

  private static Optional<String> at(Map<String, String> fields, String name, String before) {
    return Optional.ofNullable(fields.get(name)).map(value -> before + value);
  }

  private static Optional<String> search(Map<String, String> fields) {
    String journal = fields.get("container-title");
    String volume = fields.get("volume");
    String page = fields.get("page");
    return journal == null || volume == null || page == null
        ? Optional.empty()
        : Optional.of(
            PUBMED + "?term=" + term(journal + "[ta] " + volume + "[vi] " + page + "[pg]"));
  }

  private static String term(String words) {
    return URLEncoder.encode(words, StandardCharsets.UTF_8);
  }

  private Optional<String> field(String name) {
    return Optional.ofNullable(fields.get(name));
  }
}
