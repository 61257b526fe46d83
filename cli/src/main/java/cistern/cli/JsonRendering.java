package cistern.cli;

import cistern.report.json.IndentedJson;
import cistern.report.json.InterpretationJson;
import java.io.ByteArrayOutputStream;

/** JSON, not rounded. */
final class JsonRendering implements Rendering {

  private final InterpretationJson json = InterpretationJson.of(Cistern.software());

  @Override
  public String extension() {
    return "json";
  }

  @Override
  public boolean isStackable() {
    return true;
  }

  @Override
  public boolean isListed() {
    return true;
  }

  @Override
  public byte[] toBytes(Result result) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    IndentedJson.write(out, generator -> json.write(generator, result.interpretation()));
    return out.toByteArray();
  }
}
