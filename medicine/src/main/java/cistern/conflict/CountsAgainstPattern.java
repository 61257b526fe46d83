package cistern.conflict;

import cistern.bands.BandPattern;
import java.util.List;

/**
 * The counted bands and the pattern named beside them disagree about local synthesis.
 *
 * @param csfOnly counted CSF-only bands
 * @param named the pattern named
 */
public record CountsAgainstPattern(int csfOnly, BandPattern named) implements Conflict {

  @Override
  public String code() {
    return "counts-against-pattern";
  }

  @Override
  public List<String> findings() {
    return List.of("bands.csfOnly", "bands.pattern");
  }

  @Override
  public String text() {
    return "%d CSF-only bands were counted, but pattern %d was named, which stands for %s. The counts were used; ask who read the gel."
        .formatted(csfOnly, named.number(), named.isLocal() ? "local synthesis" : "none");
  }
}
