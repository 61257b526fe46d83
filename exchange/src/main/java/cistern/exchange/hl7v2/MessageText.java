package cistern.exchange.hl7v2;

import cistern.exchange.json.InputLimits;
import cistern.exchange.json.InputProblem;
import cistern.exchange.json.InputProblems;
import cistern.exchange.json.InputTrouble;
import java.io.BufferedInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The messages of a stream, one after another: a single message, a batch, or messages framed as on
 * a wire. Only one message is held at a time.
 */
final class MessageText {

  private static final Map<String, Charset> CHARSETS =
      Map.of(
          "UNICODE UTF-8",
          StandardCharsets.UTF_8,
          "UTF-8",
          StandardCharsets.UTF_8,
          "8859/1",
          StandardCharsets.ISO_8859_1,
          "8859/2",
          Charset.forName("ISO-8859-2"),
          "8859/9",
          Charset.forName("ISO-8859-9"),
          "8859/15",
          Charset.forName("ISO-8859-15"));

  private static final Charset WINDOWS = Charset.forName("windows-1252");

  private final InputStream in;
  private final InputLimits limits;
  private Optional<byte[]> next = Optional.empty();
  private int lines;
  private boolean isStarted;

  MessageText(InputStream in, InputLimits limits) {
    this.in = new BufferedInputStream(in);
    this.limits = limits;
  }

  /**
   * One message.
   *
   * @param lines its segments as text
   * @param firstLine the number of its first line in the stream
   * @param isAssumed whether the encoding was not declared and is not UTF-8
   */
  record Message(List<String> lines, int firstLine, boolean isAssumed) {}

  /** The next message; empty at the end, or with a problem noted. */
  Optional<Message> next(InputProblems problems) throws IOException {
    List<byte[]> message = new ArrayList<>();
    int first = lines + (next.isPresent() ? 0 : 1);
    long size = 0;
    Optional<byte[]> line = next.isPresent() ? next : line(problems);
    next = Optional.empty();
    while (line.isPresent()) {
      byte[] bytes = line.get();
      if (isHeader(bytes) && !message.isEmpty()) {
        next = line;
        break;
      }
      if (isHeader(bytes)) {
        first = lines;
      }
      if (bytes.length > 0 && (isHeader(bytes) || !message.isEmpty() || !isEnvelope(bytes))) {
        message.add(bytes);
      }
      size += bytes.length;
      if (size > limits.bytes()) {
        problems.add(tooLarge(first));
        return Optional.empty();
      }
      line = line(problems);
    }
    if (!problems.isValid()) {
      return Optional.empty();
    }
    return message.isEmpty() ? Optional.empty() : decoded(message, first, problems);
  }

  private InputProblem tooLarge(int line) {
    return InputProblem.of(InputTrouble.TOO_LARGE, "line " + line, limits.mebibytes());
  }

  /** The bytes of the next line, without the signs that frame a message. */
  private Optional<byte[]> line(InputProblems problems) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    int b = in.read();
    if (b < 0) {
      return Optional.empty();
    }
    lines++;
    while (b >= 0 && b != '\r' && b != '\n') {
      if (b != 0x0B && b != 0x1C) {
        bytes.write(b);
      }
      if (bytes.size() > limits.bytes()) {
        problems.add(tooLarge(lines));
        return Optional.empty();
      }
      b = in.read();
    }
    if (b == '\r') {
      in.mark(1);
      if (in.read() != '\n') {
        in.reset();
      }
    }
    return Optional.of(withoutMark(bytes.toByteArray()));
  }

  private byte[] withoutMark(byte[] line) {
    boolean isMarked =
        !isStarted && line.length >= 3 && line[0] == (byte) 0xEF && line[1] == (byte) 0xBB;
    isStarted = true;
    return isMarked ? java.util.Arrays.copyOfRange(line, 3, line.length) : line;
  }

  private static boolean isHeader(byte[] line) {
    return line.length > 3 && new String(line, 0, 3, StandardCharsets.ISO_8859_1).equals("MSH");
  }

  private static boolean isEnvelope(byte[] line) {
    return line.length >= 3
        && List.of("FHS", "BHS", "BTS", "FTS")
            .contains(new String(line, 0, 3, StandardCharsets.ISO_8859_1));
  }

  private static Optional<Message> decoded(List<byte[]> lines, int first, InputProblems problems) {
    String header = new String(lines.getFirst(), StandardCharsets.ISO_8859_1);
    String declared = declared(header);
    Optional<Charset> charset = Optional.ofNullable(CHARSETS.get(declared));
    Optional<List<String>> text = decode(lines, charset.orElse(StandardCharsets.UTF_8));
    if (text.isPresent()) {
      return Optional.of(new Message(text.get(), first, false));
    }
    if (charset.isPresent()) {
      problems.add(InputProblem.of(InputTrouble.CHARSET, "MSH-18 (line " + first + ")", declared));
      return Optional.empty();
    }
    return decode(lines, WINDOWS).map(assumed -> new Message(assumed, first, true));
  }

  private static String declared(String header) {
    List<String> fields = Delimiters.split(header, header.length() > 3 ? header.charAt(3) : '|');
    char repetition = header.length() > 5 ? header.charAt(5) : '~';
    return fields.size() > 17
        ? Delimiters.split(fields.get(17), repetition).getFirst().strip()
        : "";
  }

  private static Optional<List<String>> decode(List<byte[]> lines, Charset charset) {
    List<String> text = new ArrayList<>();
    try {
      for (byte[] line : lines) {
        text.add(
            charset
                .newDecoder()
                .onMalformedInput(CodingErrorAction.REPORT)
                .onUnmappableCharacter(CodingErrorAction.REPORT)
                .decode(ByteBuffer.wrap(line))
                .toString());
      }
      return Optional.of(text);
    } catch (CharacterCodingException notOfThisEncoding) {
      return Optional.empty();
    }
  }
}
