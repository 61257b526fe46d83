package cistern.exchange.table;

import cistern.exchange.lab.LeftOver;
import cistern.exchange.lab.LeftOver.Why;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;

/**
 * Bytes of a table to text: by a byte order mark, by the zeros of UTF-16, as UTF-8, and where it is
 * none of these as Windows-1252, which is then said.
 *
 * @param text without the mark
 * @param notes what was assumed
 */
record TableText(String text, List<LeftOver> notes) {

  private static final Charset WINDOWS = Charset.forName("windows-1252");

  static Optional<TableText> of(byte[] bytes) {
    Optional<String> wide = wide(bytes);
    Optional<String> text = wide.or(() -> decoded(bytes, 0, StandardCharsets.UTF_8));
    if (text.isPresent()) {
      return text.map(t -> new TableText(t.replaceFirst("^\ufeff", ""), List.of()));
    }
    LeftOver assumed = new LeftOver("row 1", Why.ENCODING, "", "", "");
    return decoded(bytes, 0, WINDOWS).map(t -> new TableText(t, List.of(assumed)));
  }

  private static Optional<String> wide(byte[] bytes) {
    if (bytes.length < 4) {
      return Optional.empty();
    }
    boolean isMarkedBig = bytes[0] == (byte) 0xFE && bytes[1] == (byte) 0xFF;
    boolean isMarkedLittle = bytes[0] == (byte) 0xFF && bytes[1] == (byte) 0xFE;
    boolean isBig = isMarkedBig || (bytes[0] == 0 && bytes[2] == 0 && bytes[1] != 0);
    boolean isLittle = isMarkedLittle || (bytes[1] == 0 && bytes[3] == 0 && bytes[0] != 0);
    int start = isMarkedBig || isMarkedLittle ? 2 : 0;
    return isBig
        ? decoded(bytes, start, StandardCharsets.UTF_16BE)
        : isLittle ? decoded(bytes, start, StandardCharsets.UTF_16LE) : Optional.empty();
  }

  private static Optional<String> decoded(byte[] bytes, int start, Charset charset) {
    try {
      return Optional.of(
          charset
              .newDecoder()
              .onMalformedInput(CodingErrorAction.REPORT)
              .onUnmappableCharacter(CodingErrorAction.REPORT)
              .decode(ByteBuffer.wrap(bytes, start, bytes.length - start))
              .toString());
    } catch (CharacterCodingException notOfThisEncoding) {
      return Optional.empty();
    }
  }
}
