package cistern.exchange.deidentified;

import cistern.exchange.json.InputProblem;
import cistern.exchange.json.InputProblems;
import cistern.exchange.json.InputTrouble;
import cistern.fact.Facts;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.Optional;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;

/**
 * The secret of a site, under which one person has one pseudonym and one shift of dates in every
 * file and on every day (HMAC with SHA-256, RFC 2104). Never printed and never written.
 */
public final class SiteSecret {

  private static final String ALGORITHM = "HmacSHA256";
  private static final int LONGEST = 4096;

  /** Half of a hash, 128 bit: two of a hundred million ids meet with a chance under 1e-22. */
  private static final int PSEUDONYM_BYTES = 16;

  private final SecretKeySpec key;
  private final int mostDays;

  private SiteSecret(byte[] secret, Facts facts) {
    key = new SecretKeySpec(secret, ALGORITHM);
    mostDays = (int) facts.number("deidentify.shift.days");
  }

  /**
   * The secret that a file holds, without a line break at its end.
   *
   * @param file with at least {@code deidentify.secret.bytes} bytes that are not all alike
   * @param problems is given the reason when there is none
   */
  public static Optional<SiteSecret> read(Path file, Facts facts, InputProblems problems) {
    byte[] bytes;
    try (InputStream in = Files.newInputStream(file)) {
      bytes = withoutEnd(in.readNBytes(LONGEST + 1));
    } catch (IOException e) {
      problems.add(InputProblem.of(InputTrouble.SECRET, "", "the file cannot be read"));
      return Optional.empty();
    }
    int least = (int) facts.number("deidentify.secret.bytes");
    if (bytes.length < least) {
      problems.add(
          InputProblem.of(InputTrouble.SECRET, "", "it is shorter than " + least + " bytes"));
    } else if (bytes.length > LONGEST) {
      problems.add(InputProblem.of(InputTrouble.SECRET, "", "the file is no secret but too long"));
    } else if (distinct(bytes) < facts.number("deidentify.secret.distinct")) {
      problems.add(InputProblem.of(InputTrouble.SECRET, "", "its signs repeat and can be guessed"));
    } else {
      return Optional.of(new SiteSecret(bytes, facts));
    }
    return Optional.empty();
  }

  private static byte[] withoutEnd(byte[] bytes) {
    int end = bytes.length;
    while (end > 0 && (bytes[end - 1] == '\n' || bytes[end - 1] == '\r')) {
      end--;
    }
    return Arrays.copyOf(bytes, end);
  }

  private static long distinct(byte[] bytes) {
    return new String(bytes, StandardCharsets.ISO_8859_1).chars().distinct().count();
  }

  /** The pseudonym of a person's id: letters, digits and a hyphen, 34 of them. */
  String ofPerson(String id) {
    return "p-" + HexFormat.of().formatHex(hash("person", id), 0, PSEUDONYM_BYTES);
  }

  /** The pseudonym of a work-up's id: letters, digits and a hyphen, 34 of them. */
  String ofWorkup(String id) {
    return "w-" + HexFormat.of().formatHex(hash("workup", id), 0, PSEUDONYM_BYTES);
  }

  /** By how many days the dates of a person lie earlier: 1 to {@code deidentify.shift.days}. */
  int daysEarlier(String person) {
    long chance = ByteBuffer.wrap(hash("shift", person)).getLong() & Long.MAX_VALUE;
    return 1 + (int) (chance % mostDays);
  }

  private byte[] hash(String use, String text) {
    try {
      Mac mac = Mac.getInstance(ALGORITHM);
      mac.init(key);
      return mac.doFinal((use + "\n" + text).getBytes(StandardCharsets.UTF_8));
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException("every Java has " + ALGORITHM, e);
    }
  }
}
