package cistern.clinic.audit;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.HexFormat;

/** SHA-256 (FIPS 180-4) over several parts, each with its length before it, in hexadecimal. */
public final class Digest {

  private Digest() {}

  /** The digest of some texts: another text, or the same cut elsewhere, has another. */
  public static String of(String... parts) {
    return ofBytes(
        Arrays.stream(parts).map(p -> p.getBytes(StandardCharsets.UTF_8)).toArray(byte[][]::new));
  }

  /** The digest of a file, as other programs compute it. */
  public static String sha256(byte[] file) {
    return HexFormat.of().formatHex(digest().digest(file));
  }

  /** The digest of some sequences of bytes. */
  public static String ofBytes(byte[]... parts) {
    MessageDigest sha = digest();
    for (byte[] part : parts) {
      sha.update(ByteBuffer.allocate(Integer.BYTES).putInt(part.length).array());
      sha.update(part);
    }
    return HexFormat.of().formatHex(sha.digest());
  }

  private static MessageDigest digest() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }
}
