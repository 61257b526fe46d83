package cistern.cli;

import cistern.report.json.IndentedJson;
import cistern.report.json.InterpretationJson;
import java.io.OutputStream;

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
  public void write(Result result, OutputStream out) {
    IndentedJson.write(out, generator -> json.write(generator, result.interpretation()));
  }
}
