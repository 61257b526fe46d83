package cistern.gel;

import cistern.fact.FactTable;
import cistern.fact.Facts;

/** The constants of the gel reader. */
public final class GelFacts {
  private static final Facts STANDARD = Facts.standard().with(table());

  private GelFacts() {}

  /** The table that ships with the reader. */
  public static FactTable table() {
    return FactTable.read(GelFacts.class, "gel.tsv");
  }

  /** The facts of the medicine and of the reader, without local policy. */
  public static Facts standard() {
    return STANDARD;
  }
}
