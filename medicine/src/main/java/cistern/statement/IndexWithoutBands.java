package cistern.statement;

/** A raised IgG index without CSF-only bands: it happens, and it is not the key finding. */
public record IndexWithoutBands() implements Statement {

  @Override
  public String code() {
    return "index-without-bands";
  }

  @Override
  public String text() {
    return "The IgG index is raised without CSF-only bands. This happens; the index alone satisfies"
        + " no current criterion.";
  }
}
