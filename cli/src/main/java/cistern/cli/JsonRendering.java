package cistern.cli;

import cistern.fact.Facts;
import cistern.report.json.IndentedJson;
import cistern.report.json.InterpretationJson;
import cistern.report.wording.PrintedTime;
import java.io.ByteArrayOutputStream;

/** JSON, not rounded. */
final class JsonRendering implements Rendering {

  private final InterpretationJson json;

  JsonRendering(Facts facts) {
    json = InterpretationJson.of(Cistern.software()).with(PrintedTime.of(facts));
  }

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
