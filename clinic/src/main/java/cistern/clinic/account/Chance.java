package cistern.clinic.account;

import java.util.UUID;
import java.util.random.RandomGenerator;

/** Names and codes that nobody can guess, from a source of chance that is passed in. */
public final class Chance {

  /** Without signs that are read for one another. */
  private static final String SIGNS = "ABCDEFGHJKMNPQRSTUVWXYZ23456789";

  private static final int GROUPS = 4;
  private static final int IN_A_GROUP = 4;

  private final RandomGenerator source;

  private Chance(RandomGenerator source) {
    this.source = source;
  }

  /** Chance from a source; in earnest one that is cryptographically strong. */
  public static Chance of(RandomGenerator source) {
    return new Chance(source);
  }

  /** A new identifier (RFC 9562, version 4). */
  public String identifier() {
    long high = (source.nextLong() & 0xFFFF_FFFF_FFFF_0FFFL) | 0x4000L;
    long low = (source.nextLong() & 0x3FFF_FFFF_FFFF_FFFFL) | 0x8000_0000_0000_0000L;
    return new UUID(high, low).toString();
  }

  /** A one-time code: four groups of four signs, about 79 bits. */
  public String code() {
    StringBuilder code = new StringBuilder();
    for (int i = 0; i < GROUPS * IN_A_GROUP; i++) {
      if (i > 0 && i % IN_A_GROUP == 0) {
        code.append('-');
      }
      code.append(SIGNS.charAt(source.nextInt(SIGNS.length())));
    }
    return code.toString();
  }
}
